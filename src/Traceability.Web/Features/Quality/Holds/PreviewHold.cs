using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Holds;

/// <summary>A part that a hold stops, or that is out of its reach because it has left or was scrapped.</summary>
public sealed record StoppedPart(
    string Serial,
    string Kind,
    string Model,
    [property: OneOf(typeof(PartState))] string State,
    StandingAnswer Standing
)
{
    /// <summary>True when the hold still stops something; what is with a customer must be asked back instead.</summary>
    public bool Reached => Standing.Code is not ("shipped" or "scrapped");

    /// <summary>True when a customer has it.</summary>
    public bool IsOut => Standing.Code == "shipped";
}

/// <summary>Says what a hold would stop before it is put.</summary>
public sealed class PreviewHold(
    WorkshopContext db,
    RouteShelf routes,
    WorkshopCalendar calendar,
    ListHolds holds,
    PartsNow now,
    Writes writes
)
{
    public sealed record Output(
        string Code,
        string What,
        IReadOnlyList<StoppedPart> Parts,
        IReadOnlyList<string> Stages,
        IReadOnlyList<HoldAnswer> Earlier
    );

    /// <summary>What stops with a lot: every part that contains it now. Null when there is no such lot.</summary>
    public async Task<Output?> OfLotAsync(string number, CancellationToken cancellation)
    {
        var code = number.Trim().ToUpperInvariant();
        return await db.Kept<Lot>().AsNoTracking().FirstOrDefaultAsync(l => l.Number == code, cancellation) is { } lot
            ? new(
                lot.Number,
                lot.Kind,
                await ContainersAsync(lot.Id, true, cancellation),
                [],
                await holds.OfSubjectAsync(lot.Id, cancellation)
            )
            : null;
    }

    /// <summary>What stops with a part: itself and everything it is fitted in. Null when there is no such part.</summary>
    public async Task<Output?> OfPartAsync(string serial, CancellationToken cancellation)
    {
        var code = serial.Trim().ToUpperInvariant();
        var found = await Parts().Where(p => p.Part.Serial == code).FirstOrDefaultAsync(cancellation);
        return found is null
            ? null
            : new(
                found.Part.Serial,
                found.Part.Kind,
                [.. await WithStandingsAsync([found], cancellation), .. await ContainersAsync(found.Part.Id, false, cancellation)],
                [],
                await holds.OfSubjectAsync(found.Part.Id, cancellation)
            );
    }

    /// <summary>
    /// What stops with an instrument: the stages that need its kind, unless another of the kind is used, and the attempts now open with it.
    /// </summary>
    public async Task<Output?> OfInstrumentAsync(string instrument, CancellationToken cancellation)
    {
        var code = instrument.Trim().ToUpperInvariant();
        if (await db.Kept<Instrument>().AsNoTracking().FirstOrDefaultAsync(i => i.Code == code, cancellation) is not { } found)
        {
            return null;
        }

        var inForce = await routes.AllInForceAsync(db, calendar.DayOf(writes.Now), cancellation);
        var stages = inForce
            .SelectMany(r => r.Stages.Where(s => s.InstrumentKinds.Contains(found.Kind)).Select(s => $"{r.Title}: {s.Title}"))
            .ToList();
        var used = db.Set<InstrumentUse>().Where(u => u.InstrumentId == found.Id).Select(u => (Guid?)u.AttemptId);
        var open = await Parts().Where(p => used.Contains(p.Standing.OpenAttemptId)).ToListAsync(cancellation);
        return new(
            found.Code,
            found.Kind,
            await WithStandingsAsync(open, cancellation),
            stages,
            await holds.OfSubjectAsync(found.Id, cancellation)
        );
    }

    private async Task<IReadOnlyList<StoppedPart>> ContainersAsync(Guid item, bool isLot, CancellationToken cancellation)
    {
        var containers = db.Set<Containment>()
            .Where(c => c.ItemId == item && c.ItemIsLot == isLot && c.PresentUntil == null)
            .Select(c => c.ContainerId);
        return await WithStandingsAsync(
            await Parts().Where(p => containers.Contains(p.Part.Id)).OrderBy(p => p.Part.Id).ToListAsync(cancellation),
            cancellation
        );
    }

    private IQueryable<Row> Parts() =>
        db.Set<Part>().AsNoTracking().Join(db.Set<PartStanding>(), p => p.Id, s => s.PartId, (p, s) => new Row { Part = p, Standing = s });

    private async Task<IReadOnlyList<StoppedPart>> WithStandingsAsync(IReadOnlyList<Row> rows, CancellationToken cancellation)
    {
        var standings = await now.OfAsync(rows.Select(r => r.Part.Id), cancellation);
        return
        [
            .. rows.Select(r => new StoppedPart(
                r.Part.Serial,
                r.Part.Kind,
                r.Part.Model,
                r.Standing.State,
                StandingAnswer.Of(standings[r.Part.Id].Standing)
            )),
        ];
    }

    private sealed class Row
    {
        public required Part Part { get; init; }

        public required PartStanding Standing { get; init; }
    }
}
