using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>A part that a decision holds. <c>StaysHeld</c>: another hold on it stays when this decision is lifted.</summary>
public sealed record HeldPart(
    string Serial,
    string Kind,
    string Model,
    [property: OneOf(typeof(PartState))] string State,
    bool StaysHeld,
    StandingAnswer Standing
);

/// <summary>
/// What lifting a decision would touch: the parts, lots and instrument that it still holds. <c>LiftedBefore</c> counts what was lifted one
/// by one since.
/// </summary>
public sealed record TracedHold(
    Guid Id,
    string Reason,
    DateTimeOffset HeldAt,
    Who HeldBy,
    IReadOnlyList<HeldPart> Parts,
    IReadOnlyList<string> Lots,
    string? Instrument,
    int StayHeld,
    int LiftedBefore,
    bool Open
);

/// <summary>The decisions that held what a trace found, with what lifting each of them would touch.</summary>
public sealed class TracedHolds(WorkshopContext db, TraceParts traces, NameQuery names, PartsNow now) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/quality/trace/holds", ListAsync)
            .For(Role.Quality)
            .Is(Subjects.Tracing, "listTracedHolds", "The decisions that held what a trace found, with what lifting each would touch.");
        api.MapGet("/quality/trace/holds/{id:guid}", OneAsync)
            .For(Role.Quality)
            .Is(Subjects.Tracing, "readTracedHold", "One such decision, named by any of its holds.");
    }

    public static async Task<Results<Table<Page<TracedHold>>, Problem>> ListAsync(
        string what,
        string code,
        HttpContext http,
        PageRequest page,
        TracedHolds use,
        CancellationToken cancellation
    )
    {
        var (items, refusal) = await use.RunAsync(what, code, cancellation);
        return items is null ? ProblemAnswers.From(refusal!) : Csv.Answer(page.Part(items, h => h.Id.ToString()));
    }

    public static async Task<Results<Ok<TracedHold>, Problem>> OneAsync(Guid id, TracedHolds use, CancellationToken cancellation) =>
        await use.FindAsync(id, cancellation) is { } decision
            ? TypedResults.Ok((await use.DescribeAsync([decision], cancellation))[0])
            : ProblemAnswers.From(Unknown(id));

    /// <summary>The decisions that came of the trace of something named, or why it cannot be traced.</summary>
    public async Task<(IReadOnlyList<TracedHold>? Items, Refusal? Refusal)> RunAsync(
        string what,
        string code,
        CancellationToken cancellation
    )
    {
        if (TraceKinds.FromCode(what) is not { } kind)
        {
            return (null, Refusal.Invalid("what", $"what is one of {string.Join(", ", TraceKinds.Codes)}"));
        }

        var found = await traces.FindAsync(new(kind, code), cancellation);
        return found.Subject is { } subject ? (await OfAsync(subject.Kind, subject.Code, cancellation), null) : (null, found.Refusal);
    }

    /// <summary>The decisions that came of one trace, oldest first.</summary>
    public async Task<IReadOnlyList<TracedHold>> OfAsync(TraceKind kind, string code, CancellationToken cancellation)
    {
        var mark = HoldsOfTrace.MarkOf(kind, code);
        return await DescribeAsync(await DecisionsAsync(db.Set<Hold>().Where(h => h.Reason.EndsWith(mark)), cancellation), cancellation);
    }

    /// <summary>The decision to which a hold belongs; null when there is no such hold, or when it came of no trace.</summary>
    public async Task<TracedDecision?> FindAsync(Guid holdId, CancellationToken cancellation) =>
        await db.Set<Hold>().AsNoTracking().FirstOrDefaultAsync(h => h.Id == holdId, cancellation) is { } one
        && one.Reason.Contains(" (trace of ", StringComparison.Ordinal)
            ? (
                await DecisionsAsync(
                    db.Set<Hold>().Where(h => h.RecordedAt == one.RecordedAt && h.By == one.By && h.Reason == one.Reason),
                    cancellation
                )
            )[0]
            : null;

    /// <summary>Says that a decision is not known.</summary>
    public static Refusal Unknown(Guid id) => Refusal.NotFound($"no trace led to a hold {id}");

    private async Task<IReadOnlyList<TracedDecision>> DecisionsAsync(IQueryable<Hold> which, CancellationToken cancellation)
    {
        var holds = await which.AsNoTracking().ToListAsync(cancellation);
        var ids = holds.ConvertAll(h => h.Id);
        return TracedDecision.Of(
            holds,
            (await db.Set<HoldRelease>().Where(r => ids.Contains(r.HoldId)).Select(r => r.HoldId).ToListAsync(cancellation)).ToHashSet()
        );
    }

    private async Task<IReadOnlyList<TracedHold>> DescribeAsync(IReadOnlyList<TracedDecision> decisions, CancellationToken cancellation)
    {
        var open = decisions.SelectMany(d => d.Open).ToList();
        var (parts, others) = (
            open.Select(h => h.PartId).OfType<Guid>().ToList(),
            open.Select(h => h.LotId ?? h.InstrumentId).OfType<Guid>().ToList()
        );
        var known = await (
            from p in db.Set<Part>()
            join s in db.Set<PartStanding>() on p.Id equals s.PartId
            where parts.Contains(p.Id)
            select new
            {
                p.Id,
                p.Serial,
                p.Kind,
                p.Model,
                s.State,
            }
        ).ToDictionaryAsync(p => p.Id, cancellation);
        var standings = await now.OfAsync(parts, cancellation);
        var inForce = (
            await db.Set<Hold>()
                .Where(h => h.PartId != null && parts.Contains(h.PartId.Value) && !db.Set<HoldRelease>().Any(r => r.HoldId == h.Id))
                .Select(h => new { h.Id, h.PartId })
                .ToListAsync(cancellation)
        ).ToLookup(h => h.PartId!.Value, h => h.Id);
        var codes = await db.Set<Lot>()
            .Where(l => others.Contains(l.Id))
            .Select(l => new { l.Id, Code = l.Number })
            .Union(db.Set<Instrument>().Where(i => others.Contains(i.Id)).Select(i => new { i.Id, i.Code }))
            .ToDictionaryAsync(c => c.Id, c => c.Code, cancellation);
        var people = await names.PeopleAsync(decisions.Select(d => d.Holds[0].By), cancellation);
        return [.. decisions.Select(Describe)];

        TracedHold Describe(TracedDecision d)
        {
            var mine = d.Open.Select(h => h.Id).ToHashSet();
            HeldPart[] held =
            [
                .. d
                    .Open.Select(h => h.PartId)
                    .OfType<Guid>()
                    .Select(id => known[id])
                    .OrderBy(p => p.Serial, StringComparer.Ordinal)
                    .Select(p => new HeldPart(
                        p.Serial,
                        p.Kind,
                        p.Model,
                        p.State,
                        inForce[p.Id].Any(other => !mine.Contains(other)),
                        StandingAnswer.Of(standings[p.Id].Standing)
                    )),
            ];
            return new(
                d.Id,
                d.Reason,
                d.Holds[0].OccurredAt,
                people.GetValueOrDefault(d.Holds[0].By, Who.Nobody),
                held,
                [.. d.Open.Where(h => h.LotId is not null).Select(h => codes[h.LotId!.Value]).Order(StringComparer.Ordinal)],
                d.Open.Where(h => h.InstrumentId is not null).Select(h => codes[h.InstrumentId!.Value]).FirstOrDefault(),
                held.Count(p => p.StaysHeld),
                d.Lifted.Count,
                mine.Count > 0
            );
        }
    }
}
