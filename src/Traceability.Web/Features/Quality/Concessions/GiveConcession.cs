using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Access;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Concessions;

/// <summary>Gives a concession beforehand, limited in number or time and signed with the PIN.</summary>
public sealed class GiveConcession(WorkshopContext db, WorkshopCalendar calendar, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/quality/concessions", HandleAsync)
            .For(Role.Quality)
            .Is(
                Subjects.Nonconformities,
                "giveConcession",
                "Give a concession for a lot, a code or a stage, limited in number or time; signed with the PIN."
            );

    /// <summary>What the concession covers, and how far it goes: at least one of what it covers and one of its limits are named.</summary>
    /// <param name="Reason" example="resonance 4 Hz low, no effect on the capsule">Why it is given.</param>
    /// <param name="Pin" example="162738">The PIN of whoever signs.</param>
    /// <param name="Lot" example="F-2603">Only parts that contain this lot.</param>
    /// <param name="Code" example="stage-failed">Only nonconformities with this code.</param>
    /// <param name="Stage" example="ring-resonance">Only failures of this stage, by its code.</param>
    /// <param name="MostParts" example="5">At most so many parts, 1 to 100000.</param>
    /// <param name="ValidUntil" example="2026-12-31">Last day on which it may be used.</param>
    public sealed record Input(
        string Reason,
        string Pin,
        string? Lot = null,
        string? Code = null,
        string? Stage = null,
        int? MostParts = null,
        DateOnly? ValidUntil = null
    );

    public static async Task<Results<Recorded<ConcessionRow>, Problem>> HandleAsync(
        Input input,
        SignedIn signedIn,
        GiveConcession use,
        PinSignature pins,
        Writes writes,
        CancellationToken cancellation
    ) =>
        await pins.UnprovenAsync(signedIn.Actor, input.Pin, cancellation) is { } refusal
            ? ProblemAnswers.From(refusal)
            : await writes.RecordAsync(inside => use.RunAsync(input, signedIn.Actor, inside));

    /// <summary>Gives one; its number follows the last.</summary>
    public async Task<Answer<ConcessionRow>> RunAsync(Input input, Actor actor, CancellationToken cancellation)
    {
        var lotNumber = Given(input.Lot)?.ToUpperInvariant();
        var lot = lotNumber is null
            ? null
            : await db.Set<Lot>().Where(l => l.Number == lotNumber).Select(l => (Guid?)l.Id).FirstOrDefaultAsync(cancellation);
        if (lotNumber is not null && lot is null)
        {
            return Refusal.NotFound(QualitySentences.ThereIsNoLot(input.Lot));
        }

        var today = calendar.DayOf(writes.Now);
        // Two at once take the same number; the unique index lets one win, and the other is run again.
        var given = await db.Set<ConcessionPermit>().CountAsync(cancellation);
        var number = string.Create(CultureInfo.InvariantCulture, $"CON-{given + 1:0000}");
        var decision = GivePermit.Decide(
            number,
            lot,
            Given(input.Code),
            Given(input.Stage),
            input.MostParts,
            input.ValidUntil,
            input.Reason,
            today,
            writes.Stamp(actor.PersonId)
        );
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        await writes.Book.AppendAsync(decision.Value!.Id, "give-concession", decision.Facts, cancellation);
        return Answer.Created(ConcessionRow.Of(new(decision.Value, lotNumber, new HashSet<Guid>()), today, new(actor.Badge, actor.Name)));
    }

    private static string? Given(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
