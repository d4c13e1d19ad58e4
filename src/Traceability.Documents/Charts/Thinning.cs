using OxyPlot;

namespace Traceability.Documents.Charts;

/// <summary>Makes a long log drawable without hiding an excursion: of every slice of time its lowest and its highest point stay.</summary>
internal static class Thinning
{
    private const int Slices = 400;

    public static IEnumerable<DataPoint> KeepExtremes(IEnumerable<DataPoint> log)
    {
        var points = log.ToArray();
        return points.Length <= 2 * Slices
            ? points
            : points
                .Chunk((points.Length + Slices - 1) / Slices)
                .SelectMany(slice => new[] { slice.MinBy(p => p.Y), slice.MaxBy(p => p.Y) }.OrderBy(p => p.X));
    }
}
