using System.Globalization;
using System.Reflection;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;

/// <summary>The vendored open data sets, read by column.</summary>
public sealed class Dataset
{
    private readonly string[] header;
    private readonly string[][] rows;

    private Dataset(string[] header, string[][] rows) => (this.header, this.rows) = (header, rows);

    public static Dataset Morley { get; } = Read("morley");

    public static Dataset Grr { get; } = Read("grr_10x3x3");

    public static Dataset Aml { get; } = Read("aml");

    public static Dataset Read(string name)
    {
        using var reader = new StreamReader(Open($"Datasets.{name}.csv"));
        string[][] lines =
        [
            .. reader
                .ReadToEnd()
                .Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Select(line => line.Trim().Split(',').Select(cell => cell.Trim('"')).ToArray()),
        ];
        return new Dataset(lines[0], lines[1..]);
    }

    public static Stream Open(string name)
    {
        Assembly here = typeof(Dataset).Assembly;
        string resource = here.GetManifestResourceNames().Single(n => n.EndsWith($".Statistics.{name}", StringComparison.Ordinal));
        return here.GetManifestResourceStream(resource)!;
    }

    public double[] Column(string name) => [.. Text(name).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))];

    public string[] Text(string name)
    {
        int column = Array.IndexOf(header, name);
        return [.. rows.Select(row => row[column])];
    }

    /// <summary>The values of one column, split by the levels of another in order of first appearance.</summary>
    public double[][] Groups(string values, string by) =>
        [.. Column(values).Zip(Text(by)).GroupBy(p => p.Second, p => p.First).Select(g => g.ToArray())];
}
