using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Quality.Sampling;
using Traceability.Domain.Records;
using Traceability.Domain.Stages.BoardSet;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Features.Setup.Lots;

namespace Traceability.Web.Features.Quality.Desk;

/// <summary>
/// Panel lots that are in use although the sample of their boards fails its plan: nobody is told of these but the one who closed the check.
/// </summary>
public sealed class FailedSamples(WorkshopContext db, LotQuery lots, TallySample tally, TimeProvider clock)
{
    /// <summary>Lots looked at: those with the latest nonconforming boards.</summary>
    private const int Most = 12;

    private static readonly string Method = new PhantomCheck().Name;

    public async Task<IReadOnlyList<SampleTally>> RunAsync(CancellationToken cancellation)
    {
        var since = clock.GetUtcNow().AddDays(-AnalysisFilters.UsualDays);
        var suspected = await (
            from e in db.Set<AttemptEnding>()
            where e.Method == Method && e.Verdict == Verdict.Fail && e.OccurredAt >= since
            join a in db.Set<Attempt>() on e.AttemptId equals a.Id
            join p in db.Set<Part>().Where(p => p.Kind == PartKinds.BoardSet) on a.PartId equals p.Id
            join f in db.Set<Fitting>() on p.Id equals f.PartId
            join l in db.Set<Lot>() on f.LotId equals l.Id
            group e.OccurredAt by l.Number into boards
            orderby boards.Max() descending, boards.Key
            select boards.Key
        )
            .Take(Most)
            .ToListAsync(cancellation);
        var failed = new List<SampleTally>();
        foreach (
            var lot in (await lots.FindAsync(suspected, cancellation))
                .Where(l => l.State == LotState.Released)
                .OrderBy(l => l.Lot.Number, StringComparer.Ordinal)
        )
        {
            if (await tally.RunAsync(lot.Lot, null, cancellation) is { Verdict: SampleVerdict.Failed } found)
            {
                failed.Add(found);
            }
        }

        return failed;
    }
}
