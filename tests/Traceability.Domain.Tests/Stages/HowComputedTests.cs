using System.Text.RegularExpressions;
using Traceability.Domain.Stages;
using Traceability.Domain.Tests.Routes;

namespace Traceability.Domain.Tests.Stages;

/// <summary>Every computed value can be followed to its equation and to where that comes from.</summary>
public partial class HowComputedTests
{
    public static IEnumerable<object[]> Computed =>
        OfDemoRoutes.Concat(OfDescriptions).Distinct().Select(c => new object[] { c.Method, c.Characteristic });

    private static IEnumerable<(string Method, string Characteristic)> OfDemoRoutes =>
        from stage in DemoRoutes.All.SelectMany(r => r.Stages)
        from characteristic in stage.Characteristics
        where !characteristic.Entered
        select (stage.Method, characteristic.Name);

    // A method needs no route of the demonstration to be looked at: it says itself what it computes.
    private static IEnumerable<(string Method, string Characteristic)> OfDescriptions =>
        from method in StageMethods.Names
        from value in StageMethods.Get(method).Description.Computes
        select (method, value.Name);

    [Theory]
    [MemberData(nameof(Computed))]
    public void Every_computed_characteristic_says_how_it_was_computed_and_by_what_source(string method, string characteristic)
    {
        var words = StageMethods.Get(method).HowComputed(characteristic);

        Assert.NotNull(words);
        Assert.True(Source().IsMatch(words), $"{method} names no source of {characteristic}: {words}");
    }

    [Fact]
    public void Of_every_method_that_computes_something_is_looked_at() =>
        Assert.Equal(StageMethods.Names.Where(n => n != new EnteredLimits().Name), OfDescriptions.Select(c => c.Method).Distinct().Order());

    /// <summary>A source by name, or the plain word that there is none.</summary>
    [GeneratedRegex(
        @"Sources?: |IEC \d|ISO \d|IEEE \d|WMO|JCGM|from memory|common practice, no source|workshop.s own|supplier.s",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex Source();
}
