using Traceability.Persistence.Model;
using Traceability.Persistence.Queries.Analyses;

namespace Traceability.Persistence.Queries;

/// <summary>A value that counted in one of the last verdicts of a stage, corrected where it was corrected.</summary>
public sealed record LastValue(string Stage, Guid Attempt, string Serial, bool Passed, string Characteristic, decimal Value, bool Met);

/// <summary>What the last parts came to at each stage of a route, to try other limits on.</summary>
public sealed class LastValuesQuery(WorkshopContext db)
{
    /// <summary>$1 model, $2 kind of part, $3 how many verdicts of each stage.</summary>
    public const string Sql = """
        select v.stage, v.attempt_id, v.serial, v.passed, r.characteristic, coalesce(c.value, r.value), coalesce(c.met, r.met)
        from (
            select s.*, row_number() over (partition by s.stage order by s.ended_at desc, s.attempt_id) as turn
            from stage_verdicts s where s.model = $1 and s.kind = $2
        ) v
        join readings r on r.attempt_id = v.attempt_id
        left join lateral (
            select x.value, x.met from corrections x where x.reading_id = r.id order by x.recorded_at desc, x.id desc limit 1
        ) c on true
        where v.turn <= $3
        order by v.stage, v.turn, r.characteristic
        """;

    /// <summary>The values of the last verdicts of every stage, the latest first.</summary>
    public Task<IReadOnlyList<LastValue>> FindAsync(string model, string kind, int verdicts, CancellationToken cancellation) =>
        db.RowsAsync(
            Sql,
            [model, kind, verdicts],
            r => new LastValue(
                r.GetString(0),
                r.GetGuid(1),
                r.GetString(2),
                r.GetBoolean(3),
                r.GetString(4),
                r.GetDecimal(5),
                r.GetBoolean(6)
            ),
            cancellation
        );
}
