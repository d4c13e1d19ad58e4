using System.Text.RegularExpressions;
using Traceability.Domain.Gates;

namespace Traceability.Domain.Tests.Architecture;

/// <summary>A name means one thing, and nothing goes by another name in some files.</summary>
public partial class NamesTests
{
    [Fact]
    public void Each_type_of_the_domain_has_a_name_of_its_own() => Assert.Empty(Twice(typeof(Dossier).Assembly.GetTypes()));

    [Fact]
    public void Types_of_one_name_in_two_namespaces_are_reported() =>
        Assert.Equal(["Above"], Twice([typeof(MadeUp.Quality.Above), typeof(MadeUp.Values.Above)]));

    [Theory]
    [InlineData("src/Traceability.Domain")]
    [InlineData("src/Traceability.Documents")]
    [InlineData("src/Traceability.Persistence")]
    public void No_file_gives_a_type_of_ours_another_name(string folder) =>
        Assert.Empty(TheRepository.Sources(folder.Split('/')).Where(f => Alias().IsMatch(f.Text)).Select(f => f.Path));

    [Fact]
    public void Another_name_for_a_type_of_ours_would_be_seen()
    {
        Assert.Matches(Alias(), "using System;\nusing Sample = Traceability.Domain.Evidence.ClimateLog;\n");
        Assert.DoesNotMatch(Alias(), "using HorizontalAlignment = OxyPlot.HorizontalAlignment;\n");
    }

    private static IEnumerable<string> Twice(IEnumerable<Type> types) =>
        types
            .Where(t => t.DeclaringType is null && t.Namespace?.StartsWith("Traceability", StringComparison.Ordinal) is true)
            .GroupBy(t => t.Name.Split('`')[0])
            .Where(g => g.Select(t => t.Namespace).Distinct().Count() > 1)
            .Select(g => g.Key)
            .Order(StringComparer.Ordinal);

    [GeneratedRegex(@"^\s*(global )?using \w+ = (global::)?Traceability\.", RegexOptions.Multiline)]
    private static partial Regex Alias();
}
