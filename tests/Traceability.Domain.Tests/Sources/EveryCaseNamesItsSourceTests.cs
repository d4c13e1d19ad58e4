using System.Reflection;
using System.Text.Json;
using Traceability.Domain.Tests.AgainstAnotherLibrary.Physics;
using Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;
using Xunit.Sdk;

namespace Traceability.Domain.Tests.Sources;

/// <summary>
/// Every case of the two folders of outside values carries where its value is from: a test by its attribute, a row of a data file by its
/// field. Printed values and those of another library stand apart.
/// </summary>
public class EveryCaseNamesItsSourceTests
{
    private const int Asked = 300;

    private static readonly string Root = typeof(EveryCaseNamesItsSourceTests).Assembly.GetName().Name!;

    public static TheoryData<string> BothFolders => [Folders.Printed, Folders.Library];

    [Theory]
    [MemberData(nameof(BothFolders))]
    public void Every_test_of_the_folder_names_a_source_that_belongs_there(string folder)
    {
        Assert.NotEmpty(TestsIn(folder));
        Assert.All(TestsIn(folder), test => Assert.Null(ProblemOf(test, folder)));
    }

    [Fact]
    public void Every_row_of_the_data_files_names_a_source_that_belongs_there()
    {
        var printed = ExpectedValue.Printed.Values.Select(v => (v.Id, Problem: v.Source.ProblemIn(Folders.Printed)));
        var computed = ExpectedValue.Computed.Values.Select(v => (v.Id, Problem: v.Source.ProblemIn(Folders.Library)));
        var quality = CheckValue.All.Values.Select(v => (v.Id, Problem: v.Source.ProblemIn(Folders.Library)));

        Assert.All(printed.Concat(computed).Concat(quality), v => Assert.Null(v.Problem));
    }

    [Fact]
    public void There_are_at_least_three_hundred_cases_of_either_kind()
    {
        Assert.True(TestsIn(Folders.Printed).Sum(Cases) >= Asked, $"{TestsIn(Folders.Printed).Sum(Cases)} printed");
        Assert.True(TestsIn(Folders.Library).Sum(Cases) >= Asked, $"{TestsIn(Folders.Library).Sum(Cases)} computed elsewhere");
    }

    [Fact]
    public void Every_vendored_value_is_computed_by_exactly_one_section() =>
        Assert.All(ExpectedValue.Computed.Values, value => Assert.Single(StagesAgainstAnotherLibrary.EveryResult(value)));

    [Fact]
    public void Every_vendored_value_of_quality_is_computed_and_every_computation_has_its_value() =>
        Assert.Equal(
            CheckValue.All.Keys.Order(StringComparer.Ordinal),
            QualityAgainstAnotherLibrary.Computations.Keys.Order(StringComparer.Ordinal)
        );

    [Fact]
    public void A_value_that_no_computation_knows_is_noticed() =>
        Assert.Empty(StagesAgainstAnotherLibrary.EveryResult(ExpectedValue.Computed["A1-002"] with { Formula = "A99" }));

    [Fact]
    public void None_of_the_values_went_missing() =>
        Assert.Equal((310, 17, 176), (ExpectedValue.Computed.Count, ExpectedValue.Printed.Count, CheckValue.All.Count));

    [Theory]
    [InlineData(SourceKind.Printed, "a handbook, table 3", Folders.Printed, true)]
    [InlineData(SourceKind.Library, "R 4.2.2", Folders.Library, true)]
    [InlineData(SourceKind.Library, "R 4.2.2 (Linux)", Folders.Library, true)]
    [InlineData(SourceKind.Library, "R, fisher.test", Folders.Library, false)]
    [InlineData(SourceKind.Library, "R (version not noted), fisher.test", Folders.Library, true)]
    [InlineData(SourceKind.Printed, "  ", Folders.Printed, false)]
    [InlineData((SourceKind)7, "a handbook, table 3", Folders.Printed, false)]
    [InlineData(SourceKind.Library, "R 4.2.2 (Linux)", Folders.Printed, false)]
    [InlineData(SourceKind.Printed, "a handbook, table 3", Folders.Library, false)]
    [InlineData(SourceKind.Definition, "the definition", Folders.Library, true)]
    public void A_source_without_name_version_or_known_kind_or_in_the_wrong_folder_is_a_problem(
        SourceKind kind,
        string where,
        string folder,
        bool good
    ) => Assert.Equal(good, new Source(kind, where).ProblemIn(folder) is null);

    [Theory]
    [InlineData("""{ "id": "X-1", "expected": 3 }""")]
    [InlineData("""{ "id": "X-1", "expected": 3, "source": { "kind": "rumour", "where": "somebody said so" } }""")]
    [InlineData("""{ "id": "X-1", "expected": 3, "source": { "kind": "library" } }""")]
    public void A_row_without_a_source_or_with_half_of_one_is_refused(string row)
    {
        using var document = JsonDocument.Parse(row);

        Assert.ThrowsAny<Exception>(() => Source.Of(document.RootElement));
    }

    [Fact]
    public void A_test_without_a_source_is_a_problem() =>
        Assert.Equal(
            $"{nameof(EveryCaseNamesItsSourceTests)}.{nameof(None_of_the_values_went_missing)} names no source",
            ProblemOf(GetType().GetMethod(nameof(None_of_the_values_went_missing))!, Folders.Printed)
        );

    private static string? ProblemOf(MethodInfo test, string folder)
    {
        var sources = test.GetCustomAttributes<FromAttribute>().Select(f => f.Source).ToList();
        var problem =
            sources.Count > 0 ? sources.Select(s => s.ProblemIn(folder)).FirstOrDefault(p => p is not null)
            : test.GetCustomAttribute<FromEachRowAttribute>() is null ? "names no source"
            : null;
        return problem is null ? null : $"{test.DeclaringType!.Name}.{test.Name} {problem}";
    }

    private static List<MethodInfo> TestsIn(string folder) =>
        [
            .. typeof(EveryCaseNamesItsSourceTests)
                .Assembly.GetTypes()
                .Where(t => $"{t.Namespace}.".StartsWith($"{Root}.{folder}.", StringComparison.Ordinal))
                .SelectMany(t => t.GetMethods())
                .Where(m => m.GetCustomAttributes<FactAttribute>().Any()),
        ];

    private static int Cases(MethodInfo test) =>
        test.GetCustomAttribute<TheoryAttribute>() is null
            ? 1
            : test.GetCustomAttributes<DataAttribute>().Sum(d => d.GetData(test).Count());
}
