using Traceability.Domain.Gates;
using Xunit.Abstractions;

namespace Traceability.Domain.Tests.Architecture;

public class LayersTests(ITestOutputHelper output)
{
    private const string Domain = "Traceability.Domain";
    private const string MadeUp = "Traceability.Domain.Tests.Architecture.MadeUp";

    private static readonly Type[] Compiled = typeof(Dossier).Assembly.GetTypes();
    private static readonly Type[] CompiledHere = typeof(LayersTests).Assembly.GetTypes();

    private static IReadOnlyList<Use> Uses { get; } =
    [.. CompiledUses.Of(Compiled, Domain), .. WrittenUses.Of(TheRepository.Sources("src", Domain), Domain, Compiled)];

    [Fact]
    public void A_room_uses_only_those_below_it() => Assert.Empty(Layers.Forbidden(Uses));

    [Fact]
    public void No_two_namespaces_use_each_other()
    {
        var circles = Circles.In(Uses.Select(u => (u.From, u.To)));
        output.WriteLine($"namespaces in the largest circle: {circles.Select(c => c.Count).FirstOrDefault()}");

        Assert.Empty(circles.Select(c => string.Join(", ", c)));
    }

    [Fact]
    public void Every_room_has_its_place() =>
        Assert.Equal(
            Compiled
                .Select(t => t.Namespace ?? "")
                .Where(n => n.StartsWith(Domain + ".", StringComparison.Ordinal))
                .Select(RoomOf)
                .Distinct()
                .Order(),
            Layers.Allowed.Keys.Order()
        );

    [Theory]
    [InlineData("Records -> Quality: OfField uses Above")]
    [InlineData("Records -> Quality: OfSignature uses Above")]
    [InlineData("Records -> Quality: OfCall uses Above")]
    [InlineData("Records -> Quality: OfLambda uses Above")]
    [InlineData("Records -> Quality: OfTypeTest uses Above")]
    [InlineData("Records -> Quality: OfElement uses Above")]
    public void A_compiled_use_of_a_room_above_is_reported(string use) =>
        Assert.Contains(use, Layers.Forbidden(CompiledUses.Of(CompiledHere, MadeUp)));

    [Theory]
    [InlineData("using Traceability.Domain.Work;", "Records -> Work: Made.cs uses using Work")]
    [InlineData("using static Traceability.Domain.Work.Timing;", "Records -> Work: Made.cs uses Timing")]
    [InlineData("using T = Traceability.Domain.Work.Timing;", "Records -> Work: Made.cs uses Timing")]
    [InlineData("// Work.Timing.Earliest", "Records -> Work: Made.cs uses Timing")]
    [InlineData("// Traceability.Domain.Work.Timing", "Records -> Work: Made.cs uses Timing")]
    public void A_written_use_of_a_room_above_is_reported(string line, string use) => Assert.Equal([use], Layers.Forbidden(Written(line)));

    [Theory]
    [InlineData("using Traceability.Domain.Values;")]
    [InlineData("// Values.Units")]
    [InlineData("// part.Work.Timing")]
    [InlineData("using System.Text;")]
    public void A_use_of_a_room_below_or_of_none_is_not(string line) => Assert.Empty(Layers.Forbidden(Written(line)));

    [Fact]
    public void Scanning_may_not_use_records() => Assert.Single(Layers.Forbidden([new("StationDesk", "Scanning", "Part", "Records")]));

    [Fact]
    public void Namespaces_that_reach_each_other_by_way_of_a_third_are_a_circle() =>
        Assert.Equal(["A", "B", "C"], Assert.Single(Circles.In([("A", "B"), ("B", "C"), ("C", "A"), ("C", "D"), ("D", "E")])));

    private static IEnumerable<Use> Written(string line) =>
        WrittenUses.Of([("Made.cs", $"{line}\nnamespace {Domain}.Records;\n{line}")], Domain, Compiled);

    private static string RoomOf(string name) => name[(Domain.Length + 1)..].Split('.')[0];
}
