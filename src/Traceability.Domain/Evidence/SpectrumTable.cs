namespace Traceability.Domain.Evidence;

/// <summary>What a response and a noise spectrum have in common: a level at each of a rising list of frequencies.</summary>
internal static class SpectrumTable
{
    private const int MostPoints = 200_000;

    public static List<MeasuredLevel> Read(ReadOnlyMemory<byte> content, string levelColumn, int fewest, FindingList findings)
    {
        var points = new List<MeasuredLevel>();
        if (DelimitedText.Open(content, ["frequency_hz", levelColumn], findings) is not { } table)
            return points;

        while (table.NextRow())
        {
            if (points.Count == MostPoints)
            {
                findings.Add(table.Line, EvidenceTexts.MoreThanPoints(MostPoints));
                return points;
            }
            var frequencyHz = table.Number(0, 1, 200_000);
            var level = table.Number(1, -300, 300);
            if (frequencyHz is not { } f || level is not { } l)
                continue;
            if (points.Count > 0)
                CheckOrder(findings, table.Line, points[^1].FrequencyHz, f);
            points.Add(new(f, l));
        }
        if (!findings.Any && points.Count < fewest)
            findings.Add(0, EvidenceTexts.TooFewPoints(points.Count, fewest), FileFault.TooLittle);
        return points;
    }

    private static void CheckOrder(FindingList findings, int line, double before, double now)
    {
        if (now == before)
            findings.Add(line, EvidenceTexts.FrequencyIsGivenTwice(now));
        else if (now < before)
            findings.Add(line, EvidenceTexts.FrequenciesMustRise(now, before));
    }
}
