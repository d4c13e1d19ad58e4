using System.Text.RegularExpressions;
using Traceability.Domain.Stages;
using Traceability.Domain.Tests.Architecture;
using Traceability.Domain.Tests.Routes;
using Traceability.Domain.Values;

namespace Traceability.Domain.Tests.Stages;

/// <summary>What methods tell those who write routes is said by the methods themselves, and leaves nothing out.</summary>
public class MethodDescriptionTests
{
    public static TheoryData<string> Methods => [.. StageMethods.Names];

    [Theory]
    [MemberData(nameof(Methods))]
    public void Every_method_says_what_it_judges_and_where_that_comes_from(string name)
    {
        var told = StageMethods.Get(name).Description;
        Assert.EndsWith(".", told.Text, StringComparison.Ordinal);
        Assert.NotEmpty(told.Sources);
        Assert.InRange(told.Needed, 0, told.Reads.Count);
    }

    [Theory]
    [MemberData(nameof(Methods))]
    public void Every_parameter_has_a_meaning_and_every_number_a_range(string name)
    {
        var parameters = StageMethods.Get(name).Parameters;
        Assert.All(parameters, p => Assert.EndsWith(".", p.Description, StringComparison.Ordinal));
        Assert.All(parameters.Where(p => p.IsNumber), p => Assert.True(p.Lower is not null || p.MayBeZeroOrBelow, p.Name));
        Assert.Equal(parameters.Count, parameters.Select(p => p.Name).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Methods))]
    public void Everything_that_a_method_computes_is_explained_and_has_a_unit_that_routes_may_use(string name)
    {
        var method = StageMethods.Get(name);
        Assert.All(method.Description.Computes, c => Assert.NotNull(method.HowComputed(c.Name)));
        Assert.All(method.Description.Computes, c => Assert.True(Units.TryFind(c.Unit, out _, out _), c.Unit));
    }

    [Fact]
    public void Every_number_and_key_that_a_route_of_the_demonstration_states_is_described()
    {
        var stages = DemoRoutes.All.SelectMany(r => r.Stages).ToList();
        Assert.NotEmpty(stages);
        Assert.All(
            stages,
            s =>
                Assert.Empty(
                    s.Parameters.Numbers.Keys.Except(StageMethods.Get(s.Method).Parameters.Where(p => p.IsNumber).Select(p => p.Name))
                )
        );
    }

    [Fact]
    public void Everything_that_a_route_of_the_demonstration_has_computed_is_said_to_be_computed_in_that_unit() =>
        Assert.All(
            DemoRoutes.All.SelectMany(r => r.Stages).SelectMany(s => s.Characteristics.Where(c => !c.Entered).Select(c => (s.Method, c))),
            x =>
                Assert.Contains(
                    StageMethods.Get(x.Method).Description.Computes,
                    v => v.Unit == x.c.Unit && Regex.IsMatch(x.c.Name, "^" + Pattern(v.Name) + "$", RegexOptions.IgnoreCase)
                )
        );

    [Fact]
    public void Every_number_that_the_code_of_a_method_asks_for_by_its_name_is_described_by_one()
    {
        var described = StageMethods.Names.SelectMany(n => StageMethods.Get(n).Parameters).Select(p => p.Name).ToHashSet();
        var asked = TheRepository
            .Sources("src", "Traceability.Domain", "Stages")
            .SelectMany(f => Regex.Matches(f.Text, """(?:Number|Constant|Relative)\("([a-zA-Z0-9]+)\x22""").Select(m => m.Groups[1].Value))
            .ToHashSet();
        Assert.Contains("jigRadiusMm", asked);
        Assert.Empty(asked.Except(described));
    }

    /// <summary>In front of the fixed part a route may say more: capsuleSensitivityMvPa is a sensitivity.</summary>
    private static string Pattern(string name) =>
        (name.StartsWith("sensitivity", StringComparison.Ordinal) ? "[a-z]*" : "")
        + Regex.Replace(Regex.Escape(name), @"\\\{[a-z]+}", "[A-Za-z0-9-]*");
}
