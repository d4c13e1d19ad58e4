using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Reports;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries.Analyses;

/// <summary>What a monthly report tells beside the analyses: units finished and sent out, and what was open at a moment.</summary>
public sealed class MonthQuery(WorkshopContext db, RouteShelf routes, DossierReader dossiers, NameQuery names)
{
    /// <summary>
    /// Units whose last stage was passed, or conceded, for the first time: $1 from, $2 to, $3 and $4 the routes of units with the last
    /// stage of each.
    /// </summary>
    public const string FinishedSql = """
        with last as (
            select route_id, stage from unnest($3::uuid[], $4::text[]) l(route_id, stage)
        ), done as (
            select p.id, p.model, a.stage
            from stage_verdicts a
            join parts p on p.id = a.part_id
            join last l on l.route_id = p.route_id and l.stage = a.stage
            where a.stage = any($4) and a.begun_at < $2 and a.ended_at >= $1 and a.ended_at < $2 and a.passed
            union
            select p.id, p.model, a.stage
            from dispositions d
            join nonconformities n on n.id = d.nonconformity_id
            join attempts a on a.id = n.attempt_id
            join parts p on p.id = a.part_id
            join last l on l.route_id = p.route_id and l.stage = a.stage
            where d.occurred_at >= $1 and d.occurred_at < $2 and d.kind in ('Concession', 'Regrade')
        )
        select model, count(*)::int
        from done
        where not exists (select from stage_verdicts a where a.part_id = done.id and a.stage = done.stage and a.passed and a.ended_at < $1)
            and not exists (
                select from nonconformities n
                join dispositions d on d.nonconformity_id = n.id
                join attempts a on a.id = n.attempt_id
                where n.part_id = done.id and a.stage = done.stage and d.kind in ('Concession', 'Regrade') and d.occurred_at < $1)
        group by 1
        """;

    /// <summary>Shipments, and how many of them were of units that had left before: $1 from, $2 to.</summary>
    public const string ShippedSql = """
        select p.model, count(*)::int, (count(*) filter (where exists (select from shipments b where b.part_id = s.part_id
            and b.occurred_at < s.occurred_at)))::int
        from shipments s join parts p on p.id = s.part_id
        where s.occurred_at >= $1 and s.occurred_at < $2
        group by 1
        """;

    /// <summary>Units finished and shipped from a moment (included) to a moment (excluded), by model.</summary>
    public async Task<IReadOnlyList<UnitOutput>> OutputAsync(DateTimeOffset from, DateTimeOffset to, CancellationToken cancellation)
    {
        var last = new List<(Guid Id, string Stage)>();
        foreach (
            var id in await db.Set<RouteRevision>()
                .Where(r => r.Kind == PartKinds.Unit)
                .OrderBy(r => r.Id)
                .Select(r => r.Id)
                .ToListAsync(cancellation)
        )
        {
            last.Add((id, (await routes.GetAsync(db, id, cancellation)).Stages[^1].Code));
        }

        object?[] period = [from.UtcDateTime, to.UtcDateTime];
        var finished = (
            await db.RowsAsync(
                FinishedSql,
                [.. period, last.Select(l => l.Id).ToArray(), last.Select(l => l.Stage).ToArray()],
                r => (Model: r.GetString(0), Units: r.GetInt32(1)),
                cancellation
            )
        ).ToDictionary(f => f.Model, f => f.Units);
        var shipped = (
            await db.RowsAsync(ShippedSql, period, r => (Model: r.GetString(0), Units: r.GetInt32(1), Again: r.GetInt32(2)), cancellation)
        ).ToDictionary(s => s.Model);
        return
        [
            .. finished
                .Keys.Union(shipped.Keys)
                .Order(StringComparer.Ordinal)
                .Select(m => new UnitOutput(
                    m,
                    finished.GetValueOrDefault(m),
                    shipped.TryGetValue(m, out var s) ? s.Units : 0,
                    shipped.TryGetValue(m, out var t) ? t.Again : 0
                )),
        ];
    }

    /// <summary>Nonconformities that had neither a decision nor an answering correction before a moment.</summary>
    public async Task<IReadOnlyList<WaitingNonconformity>> WaitingAsync(DateTimeOffset at, CancellationToken cancellation)
    {
        var undecided = await (
            from n in db.Set<Nonconformity>()
            join p in db.Set<Part>() on n.PartId equals p.Id
            where n.OccurredAt < at && !db.Set<Disposition>().Any(d => d.NonconformityId == n.Id && d.OccurredAt < at)
            select new
            {
                N = n,
                p.Serial,
                p.Model,
                p.Kind,
                Corrected = db.Set<Correction>().Any(c => c.PartId == p.Id),
            }
        )
            .AsNoTracking()
            .ToListAsync(cancellation);
        var answered = new HashSet<Guid>();
        foreach (
            var dossier in (
                await dossiers.LoadAsync([.. undecided.Where(n => n.Corrected).Select(n => n.N.PartId).Distinct()], cancellation)
            ).Values
        )
        {
            var then = new Dossier(dossier.Part, dossier.Route, [.. dossier.Facts.Where(f => f.OccurredAt < at)], dossier.Around);
            answered.UnionWith(then.Of<Nonconformity>().Select(n => n.Id).Except(then.OpenNonconformities().Select(n => n.Id)));
        }

        return
        [
            .. undecided
                .Where(n => !answered.Contains(n.N.Id))
                .Select(n => new WaitingNonconformity(n.Serial, n.Model, n.Kind, n.N.Stage, n.N.Code, n.N.Description, n.N.OccurredAt)),
        ];
    }

    /// <summary>Holds that had been put and not lifted before a moment.</summary>
    public async Task<IReadOnlyList<StandingHold>> HoldsAsync(DateTimeOffset at, CancellationToken cancellation)
    {
        var holds = await (
            from h in db.Set<Hold>()
            from l in db.Set<Lot>().Where(l => l.Id == h.LotId).DefaultIfEmpty()
            from p in db.Set<Part>().Where(p => p.Id == h.PartId).DefaultIfEmpty()
            from i in db.Set<Instrument>().Where(i => i.Id == h.InstrumentId).DefaultIfEmpty()
            where h.OccurredAt < at && !db.Set<HoldRelease>().Any(r => r.HoldId == h.Id && r.OccurredAt < at)
            select new
            {
                Hold = h,
                Lot = l == null ? null : l.Number,
                Part = p == null ? null : p.Serial,
                Instrument = i == null ? null : i.Code,
            }
        )
            .AsNoTracking()
            .ToListAsync(cancellation);
        var people = await names.PeopleAsync(holds.Select(h => h.Hold.By), cancellation);
        return
        [
            .. holds.Select(h => new StandingHold(
                h.Lot is not null ? "lot"
                    : h.Part is not null ? "part"
                    : "instrument",
                h.Lot ?? h.Part ?? h.Instrument!,
                h.Hold.Reason,
                h.Hold.OccurredAt,
                people.GetValueOrDefault(h.Hold.By, Who.Nobody).Name
            )),
        ];
    }

    /// <summary>Codes of instruments that measured something before a moment and were registered after it.</summary>
    public async Task<IReadOnlySet<string>> InstrumentsUsedAsync(DateTimeOffset before, CancellationToken cancellation) =>
        await db.Set<Instrument>()
            .Where(i => i.OccurredAt >= before && db.Set<InstrumentUse>().Any(u => u.InstrumentId == i.Id && u.OccurredAt < before))
            .Select(i => i.Code)
            .ToHashSetAsync(cancellation);
}
