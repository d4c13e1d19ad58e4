using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Access;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Doubts;

/// <summary>
/// The quality lead decides on parts that were measured with an instrument in doubt, and signs with the PIN: all of them, or none.
/// </summary>
public sealed class DecideAffected(WorkshopContext db, Writes writes, InstrumentQuery instruments) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/instruments/{code}/affected/decisions", HandleAsync)
            .For(Role.Quality)
            .Is(
                Subjects.Instruments,
                "decideAffected",
                "Decide on parts measured with the instrument while it was in doubt: accepted, held or remeasure; signed with the PIN."
            );

    /// <summary>More parts than this are not decided on at once.</summary>
    public const int Most = 500;

    /// <summary>
    /// The decision on parts that were measured with the instrument while it was in doubt; all of them are taken, or none.
    /// </summary>
    /// <param name="Parts">The parts' serials, 1 to 500.</param>
    /// <param name="Kind" example="accepted">
    /// accepted: the measurement stands; held: the part is put on hold; remeasure: the stage is done again.
    /// </param>
    /// <param name="Reason" example="the error found is a tenth of what is left to the nearer limit">Why.</param>
    /// <param name="Pin" example="162738">The PIN of whoever signs.</param>
    /// <param name="AloneBecause" example="I work alone this month">
    /// Why one person does what two should; needed where the workshop works single-handed and the same person built one of the parts
    /// that is accepted.
    /// </param>
    public sealed record Input(IReadOnlyList<string> Parts, DoubtDecisionKind Kind, string Reason, string Pin, string? AloneBecause = null);

    /// <summary>The decision on one part.</summary>
    /// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The decision's id.</param>
    /// <param name="Serial" example="DS-0107">The part's serial.</param>
    public sealed record DecidedPart(Guid Id, string Serial);

    /// <summary>What was decided.</summary>
    /// <param name="Instrument" example="CAP-02">The instrument's code.</param>
    /// <param name="Kind" example="accepted">What was decided.</param>
    /// <param name="Reason" example="the error found is a tenth of what is left to the nearer limit">Why.</param>
    /// <param name="Parts">The parts decided on.</param>
    public sealed record Output(string Instrument, DoubtDecisionKind Kind, string Reason, IReadOnlyList<DecidedPart> Parts);

    /// <param name="code" example="CAP-02">The instrument's code.</param>
    public static async Task<Results<Recorded<Output>, Problem>> HandleAsync(
        string code,
        Input input,
        SignedIn signedIn,
        DecideAffected use,
        PinSignature pins,
        Writes writes,
        CancellationToken cancellation
    ) =>
        await pins.UnprovenAsync(signedIn.Actor, input.Pin, cancellation) is { } refusal
            ? ProblemAnswers.From(refusal)
            : await writes.RecordAsync(inside => use.RunAsync(code, input, signedIn.Actor.Alone(input.AloneBecause), inside));

    public async Task<Answer<Output>> RunAsync(string code, Input input, Actor actor, CancellationToken cancellation)
    {
        if (await instruments.FindAsync([code.Trim().ToUpperInvariant()], cancellation) is not [{ Instrument: var instrument }])
        {
            return Refusal.NotFound(QualitySentences.ThereIsNoInstrument(code));
        }

        var serials = input.Parts.Select(p => p.Trim().ToUpperInvariant()).Distinct().ToList();
        if (serials.Count is 0 or > Most)
        {
            return Refusal.Invalid("parts", QualitySentences.NameThePartsToDecideOn(Most));
        }

        var ids = await db.Set<Part>().Where(p => serials.Contains(p.Serial)).ToDictionaryAsync(p => p.Serial, p => p.Id, cancellation);
        if (serials.FirstOrDefault(s => !ids.ContainsKey(s)) is { } unknown)
        {
            return Refusal.Invalid("parts", QualitySentences.ThereIsNoPart(unknown));
        }

        var open = await writes.Book.OpenAsync(ids.Values, cancellation);
        var decision = InstrumentDoubts.Decide(
            [.. serials.Select(s => open[ids[s]].Dossier)],
            instrument,
            input.Kind,
            input.Reason,
            actor,
            writes.Stamp(actor.PersonId)
        );
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        foreach (var decided in decision.Value!)
        {
            writes.Book.Append(open[decided.Part.Part.Id], "decide-doubt", decided.Facts);
        }

        return Answer.Created(
            new Output(
                instrument.Code,
                input.Kind,
                decision.Value![0].Decision.Reason,
                [.. decision.Value!.Select(d => new DecidedPart(d.Decision.Id, d.Part.Part.Serial))]
            )
        );
    }
}
