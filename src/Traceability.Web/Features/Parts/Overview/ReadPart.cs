using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Station;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Parts.Overview;

/// <summary>A part as it stands, and the gates of all its stages.</summary>
public sealed class ReadPart : IUseCase
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/parts/{serial}", HandleAsync)
            .Is(Subjects.Parts, "readPart", "A part as it stands; a carrier stands for the part in it.");
        api.MapGet("/parts/{serial}/gates", GatesAsync)
            .Is(Subjects.Parts, "readGates", "For every stage: may it start, when, and what is missing.");
    }

    public static async Task<Results<Ok<PartAnswer>, Problem>> HandleAsync(
        string serial,
        DossierReader dossiers,
        WorkBench bench,
        CancellationToken cancellation
    ) => await FindAsync(serial, dossiers, cancellation) is { } d ? TypedResults.Ok(bench.AnswerOf(d)) : Unknown(serial);

    public static async Task<Results<Table<Page<GateAnswer>>, Problem>> GatesAsync(
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
            page.Part([.. Gatekeeper.EvaluateAll(d, bench.ContextAt(writes.Now, actor)).Select(GateAnswer.Of)], g => g.Stage)
        );
    }

    /// <summary>The dossier behind a serial or carrier.</summary>
    public static async Task<Dossier?> FindAsync(string serial, DossierReader dossiers, CancellationToken cancellation) =>
        await dossiers.FindAsync(serial, cancellation) is { } id ? await dossiers.LoadAsync(id, cancellation) : null;

    /// <summary>404 in words.</summary>
    public static Problem Unknown(string serial) => ProblemAnswers.From(Refusal.NotFound(StationSentences.ThereIsNoPartOrCarrier(serial)));
}
