using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Traceability.Domain.Tests.AgainstPublishedValues.Physics;
using Traceability.Domain.Tests.AgainstPublishedValues.Statistics;
using Xunit.Sdk;

namespace Traceability.Domain.Tests.AgainstPublishedValues;

/// <summary>How many outside checks this folder holds, and that each says where its value is from.</summary>
public partial class EveryCheckNamesItsSourceTests
{
    private const int Asked = 300;

    private static readonly List<Type> Classes =
    [
        .. typeof(EveryCheckNamesItsSourceTests)
            .Assembly.GetTypes()
            .Where(t =>
                t.IsPublic
                && t != typeof(EveryCheckNamesItsSourceTests)
                && t.Namespace?.StartsWith(typeof(EveryCheckNamesItsSourceTests).Namespace!, StringComparison.Ordinal) == true
                && Tests(t).Any()
            ),
    ];

    [Fact]
    public void There_are_at_least_three_hundred_checks_of_the_stages_alone_that_name_their_source()
    {
        Assert.True(PublishedValue.All.Values.Count(v => v.Source.Length > 0) >= Asked);
        Assert.All(
            PublishedValue.All.Values.Select(v => (v.Id, v.Source)).Concat(CheckValue.All.Values.Select(v => (v.Id, v.Source))),
            v => Assert.Matches(@"computed|read|memory|SciPy|mpmath|R \d|Python|MIL-STD", v.Source)
        );
    }

    [Fact]
    public void Printed_values_come_on_top_of_the_vendored_ones()
    {
        var printed = Classes
            .Where(t => t != typeof(PublishedPhysicsTests) && t != typeof(PublishedStatisticsTests))
            .SelectMany(Tests)
            .Sum(Cases);

        Assert.True(printed >= Asked, $"{printed} cases besides the vendored values");
    }

    [Fact]
    public void Every_test_of_the_folder_names_a_source_above_it_or_above_its_class()
    {
        Assert.All(
            Classes,
            type =>
            {
                var text = File.ReadAllText(Directory.GetFiles(Here(), type.Name + ".cs", SearchOption.AllDirectories).Single());
                var named = SourceName().IsMatch(text[..text.IndexOf("public class", StringComparison.Ordinal)]);
                Assert.All(
                    Tests(type),
                    test =>
                    {
                        var at = text.IndexOf($" {test.Name}(", StringComparison.Ordinal);
                        var comment = text[text.LastIndexOf("\n\n", at, StringComparison.Ordinal)..at];
                        Assert.True(
                            named || SourceName().IsMatch(comment) || SourceName().IsMatch(text[..at].Split("\n\n").TakeLast(2).First()),
                            $"{type.Name}.{test.Name} names no source"
                        );
                    }
                );
            }
        );
    }

    private static IEnumerable<MethodInfo> Tests(Type type) => type.GetMethods().Where(m => m.GetCustomAttributes<FactAttribute>().Any());

    private static int Cases(MethodInfo test) =>
        test.GetCustomAttribute<TheoryAttribute>() is null
            ? 1
            : test.GetCustomAttributes<DataAttribute>().Sum(d => d.GetData(test).Count());

    private static string Here([CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;

    [GeneratedRegex(
        "Source:|from memory|ISO |IEC |IEEE|NIST|IAPWS|ASHRAE|MIL-STD|mpmath|vendored|Abramowitz|Rayleigh|Handbook|Tables",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex SourceName();
}
