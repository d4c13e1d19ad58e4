namespace Traceability.Domain.Tests.Architecture;

/// <summary>
/// The form that <c>.editorconfig</c> and the house rules declare is true: no line of C# is wider than 140 columns, no file longer than 300
/// lines. Migrations are written by a tool and are not looked at.
/// </summary>
public class SourceFormTests
{
    private const int Columns = 140;
    private const int Lines = 300;

    private static readonly Lazy<IReadOnlyList<(string Path, string[] Lines)>> Files = new(() =>
        [
            .. new[] { "src", "tests", "seed-scenario" }
                .SelectMany(folder => TheRepository.Sources(folder))
                .Where(f => Path.GetExtension(f.Path) == ".cs")
                .Select(f => (f.Path.Replace('\\', '/'), f.Text.TrimEnd('\n').Split('\n'))),
        ]
    );

    [Fact]
    public void No_line_is_wider_than_140_columns() => Assert.All(Files.Value, f => Assert.Empty(TooWide(f.Path, f.Lines)));

    [Fact]
    public void No_file_is_longer_than_300_lines() =>
        Assert.All(Files.Value, f => Assert.False(IsTooLong(f.Lines), $"{f.Path}: {f.Lines.Length} lines"));

    [Fact]
    public void The_files_are_found() =>
        Assert.All(
            ["src/Traceability.Domain/", "src/Traceability.Web/", "tests/Traceability.Domain.Tests/", "seed-scenario/"],
            folder => Assert.Contains(Files.Value, f => f.Path.StartsWith(folder, StringComparison.Ordinal))
        );

    [Theory]
    [InlineData(140, false)]
    [InlineData(141, true)]
    public void A_line_one_column_too_wide_would_be_seen(int width, bool seen) =>
        Assert.Equal(seen ? ["X.cs:2: 141 columns"] : [], TooWide("X.cs", ["short", new string('µ', width)]));

    [Theory]
    [InlineData(300, false)]
    [InlineData(301, true)]
    public void A_file_one_line_too_long_would_be_seen(int lines, bool seen) => Assert.Equal(seen, IsTooLong(new string[lines]));

    private static IEnumerable<string> TooWide(string path, string[] lines) =>
        lines.Index().Where(l => l.Item.TrimEnd('\r').Length > Columns).Select(l => $"{path}:{l.Index + 1}: {l.Item.Length} columns");

    private static bool IsTooLong(string[] lines) => lines.Length > Lines;
}
