namespace Traceability.Domain.Tests.Architecture;

/// <summary>
/// The form that <c>.editorconfig</c> and the house rules declare is true: no line of C# is wider than 140 columns, no file longer than 300
/// lines. Migrations are written by a tool and are not looked at.
/// </summary>
public class SourceFormTests
{
    private const int Columns = 140;
    private const int Lines = 300;
    private const string ToBeSplit = "to be split";

    /// <summary>Files that may be longer, by name, and why.</summary>
    private static readonly IReadOnlyDictionary<string, string> MayBeLonger = new Dictionary<string, string>
    {
        ["RefusalTexts.cs"] = "a list of sentences, one member each",
        ["RecordBook.cs"] = ToBeSplit,
        ["AcousticMethodTests.cs"] = ToBeSplit,
        ["JudgeAnewTests.cs"] = ToBeSplit,
        ["Months.cs"] = ToBeSplit,
        ["BadEvidenceTests.cs"] = ToBeSplit,
        ["FuzzTests.cs"] = ToBeSplit,
        ["RaceTests.cs"] = ToBeSplit,
        ["DoubtTests.cs"] = ToBeSplit,
        ["CertificateTests.cs"] = ToBeSplit,
        ["ConcessionTests.cs"] = ToBeSplit,
        ["StationPageTests.cs"] = ToBeSplit,
        ["Web.Tests/Station/StandingTests.cs"] = ToBeSplit,
        ["DeskLooksTests.cs"] = ToBeSplit,
    };

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
    public void No_file_is_longer_than_300_lines_but_those_that_say_why() =>
        Assert.All(
            Files.Value.Where(f => ReasonOf(f.Path) is null),
            f => Assert.False(IsTooLong(f.Lines), $"{f.Path}: {f.Lines.Length} lines")
        );

    [Fact]
    public void A_reason_stands_only_where_it_is_needed() =>
        Assert.All(
            MayBeLonger.Where(m => m.Value != ToBeSplit),
            m => Assert.Contains(Files.Value, f => IsTooLong(f.Lines) && f.Path.EndsWith("/" + m.Key, StringComparison.Ordinal))
        );

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

    private static string? ReasonOf(string path) =>
        MayBeLonger
            .FirstOrDefault(m =>
                path.EndsWith("/" + m.Key, StringComparison.Ordinal) || path.EndsWith("." + m.Key, StringComparison.Ordinal)
            )
            .Value;
}
