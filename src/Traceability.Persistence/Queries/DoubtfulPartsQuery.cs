using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>
/// One measurement in a doubtful span of an instrument: where its part is now, what was decided last, and whether the doubt is still open.
/// </summary>
public sealed record DoubtfulMeasurement(
    MeasuredWith Measured,
    string Kind,
    string Model,
    string State,
    string? FittedIn,
    DoubtfulSpan Span,
    DoubtDecision? Decision,
    bool Open
);

/// <summary>Everything that was measured with one instrument while it was in doubt, decided or not, in the order of measuring.</summary>
public sealed class DoubtfulPartsQuery(WorkshopContext db, RouteShelf routes, WorkshopCalendar calendar)
{
    /// <summary>At most <paramref name="most"/> measurements, those still open first.</summary>
    public async Task<IReadOnlyList<DoubtfulMeasurement>> RunAsync(InstrumentStanding instrument, int most, CancellationToken cancellation)
    {
        var spans = DoubtfulSpan.Of(instrument, calendar);
        if (spans.Count == 0)
        {
            return [];
        }

        var rows = await (
            from u in db.Set<InstrumentUse>()
            join a in db.Set<Attempt>() on u.AttemptId equals a.Id
            join e in db.Set<AttemptEnding>() on a.Id equals e.AttemptId
            join p in db.Set<Part>() on u.PartId equals p.Id
            join s in db.Set<PartStanding>() on p.Id equals s.PartId
            where u.InstrumentId == instrument.Instrument.Id && e.Verdict != null
            orderby u.OccurredAt, p.Serial
            select new
            {
                Part = p,
                a.Stage,
                Began = u.OccurredAt,
                Ended = e.OccurredAt,
                e.RecordedAt,
                s.State,
                FittedIn = db.Set<Part>().Where(x => x.Id == s.FittedInId).Select(x => x.Serial).FirstOrDefault(),
                Again = db.Set<Attempt>()
                    .Any(b =>
                        b.PartId == a.PartId
                        && b.Stage == a.Stage
                        && b.Number > a.Number
                        && db.Set<AttemptEnding>().Any(x => x.AttemptId == b.Id && x.Verdict != null)
                    ),
            }
        )
            .AsNoTracking()
            .ToListAsync(cancellation);
        var decisions = (
            await db.Set<DoubtDecision>()
                .AsNoTracking()
                .Where(d => d.InstrumentId == instrument.Instrument.Id)
                .OrderBy(d => d.RecordedAt)
                .ToListAsync(cancellation)
        ).ToLookup(d => d.PartId);
        var found = new List<DoubtfulMeasurement>();
        foreach (var row in rows.Where(r => spans.Any(s => s.Covers(r.Began, r.Ended))))
        {
            var own = decisions[row.Part.Id].ToList();
            var title = (await routes.GetAsync(db, row.Part.RouteId, cancellation)).Find(row.Stage)?.Title ?? row.Stage;
            var measured = new MeasuredWith(
                row.Part.Id,
                row.Part.Serial,
                row.Stage,
                title,
                instrument.Instrument.Code,
                row.Began,
                row.Ended,
                row.RecordedAt,
                row.Again,
                own.LastOrDefault(d => d.Kind == DoubtDecisionKind.Accepted)?.RecordedAt
            );
            var span = measured.DoubtIn(spans);
            found.Add(
                new(
                    measured,
                    row.Part.Kind,
                    row.Part.Model,
                    row.State,
                    row.FittedIn,
                    span ?? spans.First(s => s.Covers(row.Began, row.Ended)),
                    own.LastOrDefault(),
                    span is not null && row.State != Words.Of(PartState.Scrapped)
                )
            );
        }

        return [.. found.OrderByDescending(f => f.Open).Take(most)];
    }
}
