using Traceability.Domain.Tests.Architecture;
using Traceability.Web.Http;

namespace Traceability.Web.Tests.Architecture;

/// <summary>
/// The rooms of the service: a feature may use another, a shared room knows no feature, and nobody is reached by those whom it reaches.
/// Pages are not looked at: their code behind is.
/// </summary>
public sealed class NamespaceTests
{
    private const string Root = "Traceability.Web";

    private static readonly Type[] Compiled = typeof(Writes).Assembly.GetTypes();

    private static IReadOnlyList<Use> Uses { get; } =
    [.. CompiledUses.Of(Compiled, Root), .. WrittenUses.Of(TheRepository.Sources("src", Root), Root, Compiled)];

    [Fact]
    public void No_two_namespaces_use_each_other()
    {
        var circles = Circles.In(Uses.Select(u => (u.From, u.To)));
        Assert.True(circles.Count == 0, string.Join('\n', circles.Select(Within)));
    }

    [Fact]
    public void What_features_share_knows_no_feature_and_not_the_host()
    {
        string[] shared = ["Http", "Features.Shared"];
        Assert.Empty(Uses.Where(u => shared.Any(s => IsIn(s, u.From)) && !shared.Any(s => IsIn(s, u.To))).Select(u => u.ToString()));
    }

    [Fact]
    public void Uses_are_seen_in_both_ways_of_looking()
    {
        Assert.Contains(Uses, u => u is { From: "Features.Setup.Lots", To: "Http" });
        Assert.Contains(Uses, u => u is { From: "Hosting", To: "Http" });
    }

    private static bool IsIn(string room, string name) => name == room || name.StartsWith(room + ".", StringComparison.Ordinal);

    private static string Within(IReadOnlyList<string> circle) =>
        string.Join("; ", Uses.Where(u => circle.Contains(u.From) && circle.Contains(u.To)).Select(u => u.ToString()).Distinct());
}
