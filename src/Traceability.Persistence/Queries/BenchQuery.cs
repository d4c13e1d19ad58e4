using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>
/// A part in flight. <c>Stage</c> is the one that is open, or the next one; <c>Since</c> is when it was opened, or when the part last
/// moved. <c>Opens</c>: while open, from when it may be closed; otherwise from when the stage may start; null when time has no say.
/// <c>Closes</c>: by when the stage must have started.
/// </summary>
public sealed record BenchRow(
    Guid PartId,
    string Serial,
    string Kind,
    string Model,
    string? Carrier,
    Stage Stage,
    bool IsOpen,
    Guid? OpenBy,
    string? Station,
    Guid? LoadId,
    DateTimeOffset Since,
    DateTimeOffset? Opens,
    DateTimeOffset? Closes
);

/// <summary>
/// The parts in flight, oldest first. Reads the derived standings and, for stages that must wait, when the stage before was closed: two
/// round trips, however many finished parts there are. What else a gate asks is not judged here.
/// </summary>
public sealed class BenchQuery(WorkshopContext db, RouteShelf routes)
{
    /// <summary>More parts than this are not in flight in a small workshop; the oldest are taken.</summary>
    public const int Most = 500;

    private static readonly string[] InFlight = ["ready", "in-work"];

    public async Task<IReadOnlyList<BenchRow>> RunAsync(CancellationToken cancellation)
    {
        var parts = await (
            from s in db.Set<PartStanding>()
            where InFlight.Contains(s.State) && !s.Finished
            join p in db.Set<Part>() on s.PartId equals p.Id
            from a in db.Set<Attempt>().Where(a => a.Id == s.OpenAttemptId).DefaultIfEmpty()
            orderby s.ChangedAt, p.Serial
            select new
            {
                p.Id,
                p.Serial,
                p.Kind,
                p.Model,
                p.RouteId,
                s.CarrierCode,
                s.Stage,
                s.ChangedAt,
                Open = a,
            }
        )
            .AsNoTracking()
            .Take(Most)
            .ToListAsync(cancellation);

        var at = new Dictionary<Guid, Stage>();
        foreach (var part in parts)
        {
            if ((await routes.GetAsync(db, part.RouteId, cancellation)).Find(part.Open?.Stage ?? part.Stage ?? "") is { } stage)
            {
                at[part.Id] = stage;
            }
        }

        var closed = await ClosedAsync(
            [.. at.Where(x => x.Value.Waits.Count + x.Value.Windows.Count > 0).Select(x => x.Key)],
            cancellation
        );
        return
        [
            .. from part in parts
            where at.ContainsKey(part.Id)
            let stage = at[part.Id]
            let timed = part.Open is null
            select new BenchRow(
                part.Id,
                part.Serial,
                part.Kind,
                part.Model,
                part.CarrierCode,
                stage,
                !timed,
                part.Open?.By,
                part.Open?.Station,
                part.Open?.LoadId,
                part.Open?.OccurredAt ?? part.ChangedAt,
                timed ? Latest(stage.Waits.Select(w => After(closed, part.Id, w.AfterStage, w.MinimumMinutes)))
                    : stage.MinimumOpenMinutes is { } minutes ? part.Open!.OccurredAt.AddMinutes(minutes)
                    : null,
                timed ? Earliest(stage.Windows.Select(w => After(closed, part.Id, w.AfterStage, w.MaximumMinutes))) : null
            ),
        ];
    }

    /// <summary>
    /// From when the clocks after each stage of these parts count: its last closing, or what its log showed by then. A stage that comes
    /// before the next one is passed, so its last closing is the one that counts.
    /// </summary>
    private async Task<Dictionary<(Guid, string), DateTimeOffset>> ClosedAsync(Guid[] partIds, CancellationToken cancellation) =>
        partIds.Length == 0
            ? []
            : await (
                from a in db.Set<Attempt>()
                join e in db.Set<AttemptEnding>() on a.Id equals e.AttemptId
                where partIds.Contains(a.PartId) && e.Verdict != null
                group e.CountsFrom ?? e.OccurredAt by new { a.PartId, a.Stage } into g
                select new
                {
                    g.Key.PartId,
                    g.Key.Stage,
                    At = g.Max(),
                }
            ).ToDictionaryAsync(x => (x.PartId, x.Stage), x => x.At, cancellation);

    private static DateTimeOffset? After(Dictionary<(Guid, string), DateTimeOffset> closed, Guid part, string stage, int minutes) =>
        closed.TryGetValue((part, stage), out var at) ? at.AddMinutes(minutes) : null;

    private static DateTimeOffset? Latest(IEnumerable<DateTimeOffset?> times) => times.Max();

    private static DateTimeOffset? Earliest(IEnumerable<DateTimeOffset?> times) => times.Min();
}
