using System.Text.RegularExpressions;
using Traceability.Domain.Stages;
using Traceability.Domain.Tests.Routes;

namespace Traceability.Domain.Tests.Stages;

/// <summary>Every computed value can be followed to its equation and to where that comes from.</summary>
public partial class HowComputedTests
{
    public static IEnumerable<object[]> Computed =>
        DemoRoutes
            .All.SelectMany(r => r.Stages)
            .SelectMany(s => s.Characteristics.Where(c => !c.Entered).Select(c => (s.Method, c.Name)))
            .Distinct()
            .Select(c => new object[] { c.Method, c.Name });

    [Theory]
    [MemberData(nameof(Computed))]
    public void Every_computed_characteristic_of_every_demo_route_says_how_it_was_computed_and_by_what_source(
        string method,
        string characteristic
    )
    {
        var words = StageMethods.Get(method).HowComputed(characteristic);

        Assert.NotNull(words);
        Assert.True(Source().IsMatch(words), $"{method} names no source of {characteristic}: {words}");
    }

    [Fact]
    public void The_demo_routes_use_every_method_that_computes() =>
        Assert.Equal(
            StageMethods.Names.Where(n => n != new EnteredLimits().Name),
            DemoRoutes.All.SelectMany(r => r.Stages).Select(s => s.Method).Where(m => m != new EnteredLimits().Name).Distinct().Order()
        );

    /// <summary>A source by name, or the plain word that there is none.</summary>
    [GeneratedRegex(
        @"Sources?: |IEC \d|ISO \d|IEEE \d|WMO|JCGM|from memory|common practice, no source|workshop.s own|supplier.s",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex Source();
}
