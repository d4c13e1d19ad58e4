using System.Reflection;
using System.Text.RegularExpressions;
using Traceability.Domain.Stages;
using Traceability.Domain.Tests.Routes;

namespace Traceability.Domain.Tests.Stages;

/// <summary>Every computed value can be followed to its equation and to where that comes from.</summary>
public partial class HowComputedTests
{
    public static IEnumerable<object[]> Computed =>
        OfDemoRoutes.Concat(OfConstants).Distinct().Select(c => new object[] { c.Method, c.Characteristic });

    private static IEnumerable<(string Method, string Characteristic)> OfDemoRoutes =>
        from stage in DemoRoutes.All.SelectMany(r => r.Stages)
        from characteristic in stage.Characteristics
        where !characteristic.Entered
        select (stage.Method, characteristic.Name);

    // A method needs no route of the demonstration to be looked at: what it computes has a name in its code.
    private static IEnumerable<(string Method, string Characteristic)> OfConstants =>
        from method in StageMethods.Names
        from name in Constants
        where StageMethods.Get(method).HowComputed(name) is not null
        select (method, name);

    private static IReadOnlyList<string> Constants { get; } =
    [
        .. typeof(StageMethods)
            .Assembly.GetTypes()
            .SelectMany(t => t.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic))
            .Where(f => f.IsLiteral && f.FieldType == typeof(string))
            .Select(f => (string)f.GetRawConstantValue()!)
            .Distinct(),
    ];

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
        Assert.Equal(
            StageMethods.Names.Where(n => n != new EnteredLimits().Name),
            OfConstants.Concat(OfDemoRoutes).Select(c => c.Method).Distinct().Order()
        );

    /// <summary>A source by name, or the plain word that there is none.</summary>
    [GeneratedRegex(
        @"Sources?: |IEC \d|ISO \d|IEEE \d|WMO|JCGM|from memory|common practice, no source|workshop.s own|supplier.s",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex Source();
}
