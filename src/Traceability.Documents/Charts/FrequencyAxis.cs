using System.Globalization;
using OxyPlot.Axes;

namespace Traceability.Documents.Charts;

/// <summary>
/// Frequency as the trade reads it: logarithmic, named at 20, 50, 100, 200, 500, 1k ... 20k, ruled at every whole step of a decade.
/// </summary>
internal sealed class FrequencyAxis : LogarithmicAxis
{
    private static readonly int[] Named = [1, 2, 5];

    public override void GetTickValues(
        out IList<double> majorLabelValues,
        out IList<double> majorTickValues,
        out IList<double> minorTickValues
    )
    {
        majorTickValues = majorLabelValues = [.. Steps(Named)];
        minorTickValues = [.. Steps([3, 4, 6, 7, 8, 9])];
    }

    protected override string FormatValueOverride(double x) =>
        x >= 1000 ? (x / 1000).ToString("0.##", CultureInfo.InvariantCulture) + "k" : x.ToString("0.##", CultureInfo.InvariantCulture);

    private IEnumerable<double> Steps(int[] mantissas)
    {
        var first = (int)Math.Floor(Math.Log10(ActualMinimum));
        var last = (int)Math.Ceiling(Math.Log10(ActualMaximum));
        return Enumerable
            .Range(first, last - first + 1)
            .SelectMany(decade => mantissas.Select(mantissa => mantissa * Math.Pow(10, decade)))
            .Where(value => value >= ActualMinimum * 0.999999 && value <= ActualMaximum * 1.000001);
    }
}
