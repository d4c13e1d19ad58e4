using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Station.Bench;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.ReadPart;

/// <summary>A part as it stands, and the gates of all its stages.</summary>
public static class ReadPart
{
    public static async Task<IResult> HandleAsync(string serial, DossierReader dossiers, WorkBench bench, CancellationToken cancellation) =>
        await FindAsync(serial, dossiers, cancellation) is { } d ? Results.Ok(bench.AnswerOf(d)) : Unknown(serial);

    public static async Task<IResult> GatesAsync(
        string serial,
        HttpContext http,
        PageRequest page,
        DossierReader dossiers,
        WorkBench bench,
        Writes writes,
        SignedIn signedIn,
        CancellationToken cancellation
    )
    {
        if (await FindAsync(serial, dossiers, cancellation) is not { } d)
        {
            return Unknown(serial);
        }

        var actor = signedIn.Actor.Is(Role.Builder) ? signedIn.Actor : null;
        return Csv.Answer(
            http,
            page.Part([.. Gatekeeper.EvaluateAll(d, bench.ContextAt(writes.Now, actor)).Select(GateAnswer.Of)], g => g.Stage)
        );
    }

    /// <summary>The dossier behind a serial or carrier.</summary>
    public static async Task<Dossier?> FindAsync(string serial, DossierReader dossiers, CancellationToken cancellation) =>
        await dossiers.FindAsync(serial, cancellation) is { } id ? await dossiers.LoadAsync(id, cancellation) : null;

    /// <summary>404 in words.</summary>
    public static IResult Unknown(string serial) => ProblemAnswers.From(Refusal.NotFound(StationSentences.ThereIsNoPartOrCarrier(serial)));
}
