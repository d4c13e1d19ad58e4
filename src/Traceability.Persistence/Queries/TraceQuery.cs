using Microsoft.EntityFrameworkCore;
using Npgsql;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>
/// What is in doubt, found: its ids (lots, an instrument, a load, a person) or its codes (a carrier, a station), and the period.
/// </summary>
public sealed record TraceSubject(TraceKind Kind, string Code, Guid[] Ids, string[] Codes, DateTimeOffset From, DateTimeOffset To);

/// <summary>
/// A part that the subject touched or that contains something it touched. <c>Since</c>: from when it was touched, or had the touched thing
/// inside; <c>Until</c>: when that was taken out for the last time. <c>OutermostId</c>: what it is in, at the top; null when in nothing.
/// </summary>
public sealed record TraceRow(
    Guid PartId,
    bool Direct,
    bool Present,
    int PresentTimes,
    int Times,
    DateTimeOffset Since,
    DateTimeOffset? Until,
    Guid? OutermostId
);

/// <summary>
/// Follows what is in doubt upwards through the kept closure: what was touched, and every part that had it inside since. One statement,
/// whatever the depth. A part that held a diaphragm only before that was measured with a bad instrument is not in it.
/// </summary>
public sealed class TraceQuery(WorkshopContext db)
{
    /// <summary>Before and after everything that is kept.</summary>
    public static readonly DateTimeOffset Beginning = new(1900, 1, 1, 0, 0, 0, TimeSpan.Zero),
        End = new(2200, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private const string Attempts = """
        select a.part_id as item_id, min(greatest(a.occurred_at, @from)) as since
        from attempts a left join attempt_endings e on e.attempt_id = a.id
        where {0} and a.occurred_at <= @to and coalesce(e.occurred_at, 'infinity') >= @from
        group by a.part_id
        """;

    private const string Upwards = """
        , doubt as (select item_id, since from source where since <= @at),
        hit as (
            select d.item_id as part_id, true as direct, true as present, d.since, null::timestamptz as until
            from doubt d where @direct and exists (select from parts p where p.id = d.item_id)
            union all
            select c.container_id, false, c.present_until is null or c.present_until > @at, greatest(c.present_from, d.since), case
                when c.present_until <= @at then c.present_until end
            from doubt d join containments c on c.item_id = d.item_id
            where c.present_from <= @at and (c.present_until is null or c.present_until > d.since)
        ),
        part as (
            select part_id, bool_or(direct) as direct, bool_or(present) as present, count(*) filter (where not direct
                and present) as present_times,
                count(*) filter (where not direct) as times, min(since) as since, max(until) as until
            from hit where part_id > @after group by part_id order by part_id limit @limit
        )
        select p.part_id, p.direct, p.present, p.present_times::int, p.times::int, p.since, p.until, t.container_id
        from part p left join lateral (
            select c.container_id from containments c
            where c.item_id = p.part_id and not c.item_is_lot and c.present_from <= @at and (c.present_until is null
                or c.present_until > @at)
            order by c.depth desc limit 1
        ) t on true
        order by p.part_id
        """;

    /// <summary>
    /// The parts in the order of their making, as of a moment; at most <paramref name="limit"/> after <paramref name="after"/>.
    /// </summary>
    public async Task<IReadOnlyList<TraceRow>> RunAsync(
        TraceSubject subject,
        DateTimeOffset at,
        Guid? after,
        int limit,
        CancellationToken cancellation
    )
    {
        await db.Database.OpenConnectionAsync(cancellation);
        try
        {
            await using var command = new NpgsqlCommand(
                $"with source as (\n{SourceOf(subject.Kind)}\n){Upwards}",
                (NpgsqlConnection)db.Database.GetDbConnection()
            );
            command.Parameters.AddWithValue("ids", subject.Ids);
            command.Parameters.AddWithValue("codes", subject.Codes);
            command.Parameters.AddWithValue("from", subject.From);
            command.Parameters.AddWithValue("to", subject.To);
            command.Parameters.AddWithValue("at", at);
            command.Parameters.AddWithValue("after", after ?? Guid.Empty);
            command.Parameters.AddWithValue("limit", limit);
            command.Parameters.AddWithValue("direct", subject.Kind is not (TraceKind.Lot or TraceKind.SupplierLot));
            var rows = new List<TraceRow>();
            await using var reader = await command.ExecuteReaderAsync(cancellation);
            while (await reader.ReadAsync(cancellation))
            {
                rows.Add(
                    new(
                        reader.GetGuid(0),
                        reader.GetBoolean(1),
                        reader.GetBoolean(2),
                        reader.GetInt32(3),
                        reader.GetInt32(4),
                        reader.GetFieldValue<DateTimeOffset>(5),
                        await reader.IsDBNullAsync(6, cancellation) ? null : reader.GetFieldValue<DateTimeOffset>(6),
                        await reader.IsDBNullAsync(7, cancellation) ? null : reader.GetGuid(7)
                    )
                );
            }

            return rows;
        }
        finally
        {
            await db.Database.CloseConnectionAsync();
        }
    }

    private static string SourceOf(TraceKind kind) =>
        kind switch
        {
            TraceKind.Lot or TraceKind.SupplierLot => "select id as item_id, @from as since from lots where id = any(@ids)",
            TraceKind.Instrument => """
                select u.part_id as item_id, min(greatest(u.occurred_at, @from)) as since
                from instrument_uses u left join attempt_endings e on e.attempt_id = u.attempt_id
                where u.instrument_id = any(@ids) and u.occurred_at <= @to and coalesce(e.occurred_at, 'infinity') >= @from
                group by u.part_id
                """,
            TraceKind.Carrier => """
                select p.part_id as item_id, min(greatest(p.occurred_at, @from)) as since
                from carrier_placements p
                left join lateral (
                    select min(r.occurred_at) as at from carrier_releases r where r.part_id = p.part_id and r.carrier_code = p.carrier_code
                        and r.recorded_at > p.recorded_at
                ) out on true
                where p.carrier_code = any(@codes) and p.occurred_at <= @to and coalesce(out.at, 'infinity') >= @from
                group by p.part_id
                """,
            TraceKind.Load => Attempts.Replace("{0}", "a.load_id = any(@ids)", StringComparison.Ordinal),
            TraceKind.Station => Attempts.Replace("{0}", "a.station = any(@codes)", StringComparison.Ordinal),
            TraceKind.Person => """
                select w.part_id as item_id, min(w.occurred_at) as since from (
                    select part_id, occurred_at from attempts t where t.by = any(@ids) union all select part_id, occurred_at
                        from attempt_endings t where t.by = any(@ids)
                    union all select part_id, occurred_at from readings t where t.by = any(@ids) union all select part_id, occurred_at
                        from fittings t where t.by = any(@ids)
                    union all select part_id, occurred_at from removals t where t.by = any(@ids) union all select part_id, occurred_at
                        from corrections t where t.by = any(@ids)
                ) w
                where w.occurred_at between @from and @to
                group by w.part_id
                """,
            _ => throw new ArgumentOutOfRangeException(nameof(kind)),
        };
}
