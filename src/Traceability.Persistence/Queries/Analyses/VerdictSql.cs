namespace Traceability.Persistence.Queries.Analyses;

/// <summary>Pieces of statements that several analyses share: what an attempt <c>a</c> with its ending <c>e</c> came to.</summary>
internal static class VerdictSql
{
    /// <summary>
    /// True when the attempt passed with all corrections taken into account, as <c>AttemptView.Passed</c> says. Corrections are rare, so only the
    /// attempts of corrected parts are looked at reading by reading.
    /// </summary>
    public const string Passed = """
        (case when exists (select from corrections k where k.part_id = a.part_id)
            then not e.failed_by_finding and not exists (
                select from readings r where r.attempt_id = a.id
                and not coalesce((select c.met from corrections c where c.reading_id = r.id order by c.recorded_at desc, c.id desc limit 1), r.met))
            else e.verdict = 'Pass' end)
        """;

    /// <summary>True for the first attempt of the part at the stage that came to a verdict.</summary>
    public const string First = """
        (a.number = 1 or not exists (
            select from attempts earlier join attempt_endings ended on ended.attempt_id = earlier.id
            where earlier.part_id = a.part_id and earlier.stage = a.stage and earlier.number < a.number and ended.verdict is not null))
        """;

    /// <summary>Where in the life of a film a stage of part <c>p</c> lies: diaphragm, capsule, soak, insulation, acoustic, final.</summary>
    public const string Place = """
        (case when p.kind = 'unit' then 'final'
            when e.method = 'climate-soak' then 'soak'
            when e.method like 'insulation%' then 'insulation'
            when p.kind = 'capsule' and (e.method like 'response%' or e.method like 'acoustic%' or a.stage like 'acoustic%') then 'acoustic'
            else p.kind end)
        """;
}
