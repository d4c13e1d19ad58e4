using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries.Analyses;

/// <summary>A characteristic of a stage of a model.</summary>
public sealed record SeriesAsked(string Model, string Stage, string Characteristic);

/// <summary>One value of a characteristic as it counts now; <c>IsBound</c> marks a lower bound (">300").</summary>
public sealed record SeriesValue(string Serial, DateTimeOffset At, double Value, bool IsBound, bool Met);

/// <summary>The values of many characteristics at once, so that a report asks once and not for each.</summary>
public sealed class SeriesQuery(WorkshopContext db)
{
    /// <summary>
    /// $1 from, $2 to, $3 models, $4 stages and $5 characteristics, side by side. The values as they count now, in the order of work.
    /// </summary>
    public const string ValuesSql = """
        select v.model, v.stage, r.characteristic, v.serial, v.begun_at, coalesce(c.value, r.value)::float8,
            coalesce(c.digits, r.digits) like '>%', coalesce(c.met, r.met)
        from unnest($3::text[], $4::text[], $5::text[]) w (model, stage, characteristic)
        join stage_verdicts v on v.model = w.model and v.stage = w.stage and v.begun_at >= $1 and v.begun_at < $2
        join readings r on r.attempt_id = v.attempt_id and r.characteristic = w.characteristic
        left join lateral (select value, digits, met from corrections c where c.reading_id = r.id
            order by c.recorded_at desc, c.id desc limit 1) c on true
        order by v.begun_at, v.attempt_id, r.id
        """;

    /// <summary>The values begun in the period, by what was asked; nothing stands under what has no values.</summary>
    public async Task<ILookup<SeriesAsked, SeriesValue>> ValuesAsync(
        DateTimeOffset from,
        DateTimeOffset to,
        IReadOnlyCollection<SeriesAsked> asked,
        CancellationToken cancellation
    ) =>
        (
            await db.RowsAsync(
                ValuesSql,
                [
                    from.UtcDateTime,
                    to.UtcDateTime,
                    asked.Select(a => a.Model).ToArray(),
                    asked.Select(a => a.Stage).ToArray(),
                    asked.Select(a => a.Characteristic).ToArray(),
                ],
                r =>
                    (
                        Of: new SeriesAsked(r.GetString(0), r.GetString(1), r.GetString(2)),
                        Value: new SeriesValue(
                            r.GetString(3),
                            r.GetFieldValue<DateTimeOffset>(4),
                            r.GetDouble(5),
                            r.GetBoolean(6),
                            r.GetBoolean(7)
                        )
                    ),
                cancellation
            )
        ).ToLookup(r => r.Of, r => r.Value);
}
