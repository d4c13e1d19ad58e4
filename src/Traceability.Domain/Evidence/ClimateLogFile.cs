using System.Globalization;

namespace Traceability.Domain.Evidence;

/// <summary>Reads a <c>climate-log</c>: CSV with the columns <c>time,temperature_c,humidity_pct</c>.</summary>
/// <remarks>
/// Refused: a temperature outside -100..250 °C or a humidity outside 0..110 % (a broken sensor; saturated air reads a little above
/// 100), a year before 2000 (a clock never set), a time that repeats or goes back, a jump of more than a week, zones on some lines only,
/// fewer than two readings. The limits are common practice, no source. A gap (more than five usual intervals and more than a minute) is
/// noted, not refused: whether it matters depends on the stage. Checked by <c>ClimateLogFileTests</c>.
/// </remarks>
public static class ClimateLogFile
{
    private const int FirstCredibleYear = 2000;
    private const int MostRows = 2_000_000;
    private static readonly TimeSpan LongestJump = TimeSpan.FromDays(7);
    private static readonly TimeSpan ShortestGap = TimeSpan.FromMinutes(1);
    private static readonly string[] Columns = ["time", "temperature_c", "humidity_pct"];

    /// <summary>The log, or what is wrong with the file.</summary>
    public static ParsedFile<ClimateLog> Read(ReadOnlyMemory<byte> content)
    {
        var findings = new FindingList();
        var rows = new List<ClimateLogRow>();
        var lines = new List<int>();
        bool? zoned = null;
        if (DelimitedText.Open(content, Columns, findings) is not { } table)
            return findings.Refuse<ClimateLog>();

        while (table.NextRow())
        {
            if (rows.Count == MostRows)
                return findings.Refuse<ClimateLog>(EvidenceTexts.MoreReadingsThanALogHas(MostRows), FileFault.BadContent);
            var at = Time(table, findings, ref zoned);
            var temperatureC = table.Number(1, -100, 250);
            double? humidityPct = table.Field(2).IsEmpty ? null : table.Number(2, 0, 110);
            if (at is null || temperatureC is null)
                continue;
            if (rows.Count > 0)
                CheckStep(findings, table.Line, rows[^1].At, at.Value);
            rows.Add(new(at.Value, temperatureC.Value, humidityPct));
            lines.Add(table.Line);
        }
        if (!findings.Any && rows.Count < 2)
            findings.Add(0, EvidenceTexts.TooFewReadingsForALog(rows.Count), FileFault.TooLittle);
        if (findings.Any)
            return findings.Refuse<ClimateLog>();

        var usual = UsualInterval(rows);
        var gaps = Gaps(rows, lines, usual).ToList();
        if (zoned is false)
            findings.Note(EvidenceTexts.TimesAreTakenAsUtc);
        foreach (var gap in gaps.Take(10))
            findings.Note(EvidenceTexts.NothingWasLoggedFor(gap.Line, Spoken(gap.To - gap.From), Spoken(usual)));
        return findings.Accept(new ClimateLog(rows, usual, gaps, zoned is false));
    }

    private static DateTimeOffset? Time(DelimitedText table, FindingList findings, ref bool? zoned)
    {
        var field = table.Field(0);
        if (!IsoTime.TryRead(field, out var at, out var hasZone))
        {
            findings.Add(table.Line, EvidenceTexts.TimeIsNoIsoTime(DelimitedText.Shown(field)));
            return null;
        }
        if (zoned is { } before && before != hasZone)
        {
            findings.Add(table.Line, hasZone ? EvidenceTexts.TimeHasAZoneAtOnce : EvidenceTexts.TimeHasNoZoneAtOnce);
            return null;
        }
        zoned = hasZone;
        if (at.Year >= FirstCredibleYear)
            return at;
        findings.Add(table.Line, EvidenceTexts.TimeIsInNoSensibleYear(at.Year));
        return null;
    }

    private static void CheckStep(FindingList findings, int line, DateTimeOffset before, DateTimeOffset now)
    {
        var step = now - before;
        if (step == TimeSpan.Zero)
            findings.Add(line, EvidenceTexts.TimeIsTheSameAsBefore);
        else if (step < TimeSpan.Zero)
            findings.Add(line, EvidenceTexts.TimeGoesBack(Spoken(-step)));
        else if (step > LongestJump)
            findings.Add(line, EvidenceTexts.TimeJumpsAhead(Spoken(step)));
    }

    private static TimeSpan UsualInterval(List<ClimateLogRow> rows)
    {
        var steps = new long[rows.Count - 1];
        for (var i = 0; i < steps.Length; i++)
            steps[i] = (rows[i + 1].At - rows[i].At).Ticks;
        Array.Sort(steps);
        return TimeSpan.FromTicks(steps[(steps.Length - 1) / 2]);
    }

    private static IEnumerable<LogGap> Gaps(List<ClimateLogRow> rows, List<int> lines, TimeSpan usual)
    {
        var longest = usual * 5 > ShortestGap ? usual * 5 : ShortestGap;
        for (var i = 1; i < rows.Count; i++)
            if (rows[i].At - rows[i - 1].At > longest)
                yield return new(lines[i], rows[i - 1].At, rows[i].At);
    }

    private static string Spoken(TimeSpan span) =>
        span switch
        {
            { TotalDays: >= 2 } => EvidenceTexts.SpanOfDays(span.TotalDays),
            { TotalHours: >= 1 } => EvidenceTexts.SpanOfHours((int)span.TotalHours, span.Minutes),
            { TotalMinutes: >= 1 } => EvidenceTexts.SpanOfMinutes(span.Minutes, span.Seconds),
            _ => string.Create(CultureInfo.InvariantCulture, $"{span.TotalSeconds:0.###} s"),
        };
}
