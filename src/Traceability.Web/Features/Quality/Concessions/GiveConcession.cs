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
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Access;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Concessions;

/// <summary>
/// A concession for parts to come, with what is left of it. <c>State</c> is <c>open</c>, <c>used-up</c> or <c>expired</c>.
/// </summary>
public sealed record ConcessionRow(
    string Number,
    [property: OneOf("ConcessionState", "open", "used-up", "expired")] string State,
    string? Lot,
    string? Code,
    string? Stage,
    int? MostParts,
    DateOnly? ValidUntil,
    int Used,
    int? Left,
    string Reason,
    DateTimeOffset GivenAt,
    Who GivenBy
);

/// <summary>GiveConcession that are given beforehand, limited in quantity or time, and what was used of them.</summary>
public sealed class GiveConcession(WorkshopContext db, PermitQuery permits, NameQuery names, WorkshopCalendar calendar, Writes writes)
    : IUseCase
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/quality/concessions", GiveConcession.ListAsync)
            .Is(Subjects.Nonconformities, "listConcessions", "Concessions given beforehand, with what is left of each.");
        api.MapPost("/quality/concessions", GiveConcession.GiveAsync)
            .For(Role.Quality)
            .Is(
                Subjects.Nonconformities,
                "giveConcession",
                "Give a concession for a lot, a code or a stage, limited in number or time; signed with the PIN."
            );
    }

    public sealed record Input(
        string Reason,
        string Pin,
        string? Lot = null,
        string? Code = null,
        string? Stage = null,
        int? MostParts = null,
        DateOnly? ValidUntil = null
    );

    public static async Task<Table<Page<ConcessionRow>>> ListAsync(
        HttpContext http,
        PageRequest page,
        GiveConcession use,
        CancellationToken cancellation
    ) => Csv.Answer(page.Part(await use.ListAsync(cancellation), c => c.Number));

    public static async Task<Results<Recorded<ConcessionRow>, Problem>> GiveAsync(
        Input input,
        SignedIn signedIn,
        GiveConcession use,
        PinSignature pins,
        Writes writes,
        CancellationToken cancellation
    ) =>
        await pins.UnprovenAsync(signedIn.Actor, input.Pin, cancellation) is { } refusal
            ? ProblemAnswers.From(refusal)
            : await writes.RecordAsync(inside => use.GiveAsync(input, signedIn.Actor, inside));

    /// <summary>All of them, the latest first.</summary>
    public async Task<IReadOnlyList<ConcessionRow>> ListAsync(CancellationToken cancellation)
    {
        var found = await permits.FindAsync(null, cancellation);
        var people = await names.PeopleAsync(found.Select(p => p.Permit.By), cancellation);
        return [.. found.Select(p => RowOf(p, people.GetValueOrDefault(p.Permit.By, Who.Nobody)))];
    }

    /// <summary>Gives one; its number follows the last.</summary>
    public async Task<Answer<ConcessionRow>> GiveAsync(Input input, Actor actor, CancellationToken cancellation)
    {
        var lotNumber = Given(input.Lot)?.ToUpperInvariant();
        var lot = lotNumber is null
            ? null
            : await db.Set<Lot>().Where(l => l.Number == lotNumber).Select(l => (Guid?)l.Id).FirstOrDefaultAsync(cancellation);
        if (lotNumber is not null && lot is null)
        {
            return Refusal.NotFound(QualitySentences.ThereIsNoLot(input.Lot));
        }

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
            calendar.DayOf(writes.Now),
            writes.Stamp(actor.PersonId)
        );
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        await writes.Book.AppendAsync(decision.Value!.Id, "give-concession", decision.Facts, cancellation);
        return Answer.Created(RowOf(new(decision.Value, lotNumber, new HashSet<Guid>()), new(actor.Badge, actor.Name)));
    }

    private static string? Given(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    private ConcessionRow RowOf(PermitStanding p, Who by) =>
        new(
            p.Permit.Number,
            p.StateOn(calendar.DayOf(writes.Now)),
            p.LotNumber,
            p.Permit.Code,
            p.Permit.Stage,
            p.Permit.MostParts,
            p.Permit.ValidUntil,
            p.UsedOn.Count,
            p.Left,
            p.Permit.Reason,
            p.Permit.OccurredAt,
            by
        );
}
