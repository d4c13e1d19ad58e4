using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.GaugeStudy;

/// <summary>The readings of a crossed study as a full table: every part by every appraiser, the same number of times.</summary>
internal sealed record GaugeCells(int Parts, int Appraisers, int Trials, double[][][] Readings)
{
    /// <summary>Readings[appraiser][part] holds the trials of that cell.</summary>
    public static Computed<GaugeCells> Of(IReadOnlyList<GaugeReading> readings)
    {
        Sample.RequireFinite([.. readings.Select(r => r.Value)]);
        string[] parts = [.. readings.Select(r => r.Part).Distinct()],
            appraisers = [.. readings.Select(r => r.Appraiser).Distinct()];
        if (parts.Length < 2)
        {
            return new NotEnoughData("parts", 2, parts.Length);
        }

        if (appraisers.Length < 2)
        {
            return new NotEnoughData("appraisers", 2, appraisers.Length);
        }

        var byCell = readings.ToLookup(r => (r.Appraiser, r.Part), r => r.Value);
        double[][][] cells = [.. appraisers.Select(a => parts.Select(p => byCell[(a, p)].ToArray()).ToArray())];
        int fewest = cells.Min(row => row.Min(cell => cell.Length)),
            most = cells.Max(row => row.Max(cell => cell.Length));
        int needed = Math.Max(2, most);
        return fewest < needed
            ? new NotEnoughData("readings of every part by every appraiser", needed, fewest)
            : new GaugeCells(parts.Length, appraisers.Length, fewest, cells);
    }

    public double[] AppraiserMeans => [.. Readings.Select(row => Sample.Mean([.. row.SelectMany(cell => cell)]))];

    public double[] PartMeans => [.. Enumerable.Range(0, Parts).Select(p => Sample.Mean([.. Readings.SelectMany(row => row[p])]))];
}
