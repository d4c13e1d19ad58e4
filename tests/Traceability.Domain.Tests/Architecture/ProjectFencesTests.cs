using System.Text.RegularExpressions;

namespace Traceability.Domain.Tests.Architecture;

/// <summary>Dependencies point down: Web to Documents, Persistence and migrations, those to Domain, and Domain to nobody.</summary>
public partial class ProjectFencesTests
{
    private static readonly Dictionary<string, string[]> Below = new()
    {
        ["Traceability.Domain"] = [],
        ["Traceability.Documents"] = ["Traceability.Domain"],
        ["Traceability.Persistence"] = ["Traceability.Domain"],
        ["Traceability.Migrations"] = ["Traceability.Domain", "Traceability.Persistence"],
        // The demo scenario knows the service only by its public contract.
        ["Traceability.SeedScenario"] = [],
        ["Traceability.Web"] =
        [
            "Traceability.Documents",
            "Traceability.Domain",
            "Traceability.Migrations",
            "Traceability.Persistence",
            "Traceability.SeedScenario",
        ],
    };

    /// <summary>Packages behind a fence, by the start of their name, and the projects inside it.</summary>
    private static readonly Dictionary<string, string[]> Fenced = new()
    {
        ["PDFsharp"] = ["Traceability.Documents"],
        ["OxyPlot"] = ["Traceability.Documents"],
        ["ZXing"] = ["Traceability.Documents"],
        ["Npgsql"] = ["Traceability.Persistence", "Traceability.Migrations"],
        ["Microsoft.EntityFrameworkCore"] = ["Traceability.Persistence", "Traceability.Migrations"],
        ["MathNet"] = ["Traceability.Domain"],
        ["YamlDotNet"] = ["Traceability.Domain", "Traceability.SeedScenario"],
    };

    public static TheoryData<string> Projects => [.. TheRepository.Projects.Keys];

    [Fact]
    public void Every_project_has_its_place() => Assert.Equal(Below.Keys.Order(), TheRepository.Projects.Keys.Order());

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_refers_only_to_those_below_it(string project) =>
        Assert.Empty(TheRepository.Projects[project].ProjectsReferenced().Except(Below[project]));

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_package_behind_a_fence_is_referred_to_only_from_inside(string project) =>
        Assert.DoesNotContain(TheRepository.Projects[project].Included("PackageReference"), p => IsOutside(p, project));

    [Fact]
    public void The_core_has_two_packages_and_an_analyzer() =>
        Assert.Equal(
            ["MathNet.Numerics", "Microsoft.CodeAnalysis.BannedApiAnalyzers", "YamlDotNet"],
            TheRepository.Projects["Traceability.Domain"].Included("PackageReference").Order()
        );

    [Fact]
    public void A_package_outside_its_fence_would_be_seen()
    {
        Assert.True(IsOutside("PDFsharp", "Traceability.Web"));
        Assert.True(IsOutside("Npgsql.EntityFrameworkCore.PostgreSQL", "Traceability.Domain"));
        Assert.False(IsOutside("OxyPlot.Core", "Traceability.Documents"));
    }

    // A package flows on to whoever refers to the project, so that the project files alone do not keep a fence: the sources must not name
    // it either.
    [Theory]
    [InlineData("src/Traceability.Domain")]
    [InlineData("src/Traceability.Persistence")]
    [InlineData("src/Traceability.Web")]
    [InlineData("migrations")]
    [InlineData("seed-scenario")]
    public void Nobody_but_Documents_draws(string folder) =>
        Assert.Empty(TheRepository.Sources(folder.Split('/')).Where(f => Drawing().IsMatch(f.Text)).Select(f => f.Path));

    [Theory]
    [InlineData("src/Traceability.Domain")]
    [InlineData("src/Traceability.Documents")]
    [InlineData("src/Traceability.Web/Features")]
    [InlineData("seed-scenario")]
    public void Neither_the_core_nor_the_drawing_nor_a_use_case_speaks_to_the_database_driver(string folder) =>
        Assert.Empty(TheRepository.Sources(folder.Split('/')).Where(f => Driver().IsMatch(f.Text)).Select(f => f.Path));

    [Fact]
    public void The_words_looked_for_are_found_where_they_belong()
    {
        Assert.Contains(TheRepository.Sources("src", "Traceability.Documents"), f => Drawing().IsMatch(f.Text));
        Assert.Contains(TheRepository.Sources("src", "Traceability.Persistence"), f => Driver().IsMatch(f.Text));
    }

    private static bool IsOutside(string package, string project) =>
        Fenced.Any(f => package.StartsWith(f.Key, StringComparison.OrdinalIgnoreCase) && !f.Value.Contains(project));

    [GeneratedRegex(@"\b(PdfSharp|OxyPlot|ZXing)\.")]
    private static partial Regex Drawing();

    [GeneratedRegex(@"\b(using Npgsql|Npgsql\.|Npgsql[A-Z]\w+)")]
    private static partial Regex Driver();
}
