using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace Traceability.Domain.Routes.Files;

/// <summary>
/// Reads a route from its text form (YAML), strictly: unknown keys, methods, units or contradictory limits are problems with their line.
/// </summary>
public static partial class RouteText
{
    /// <summary>
    /// Reads one route. Never throws for bad text; the problems say what is wrong and where. The approver that it may name is a wish: only
    /// that person's own word puts the route in force.
    /// </summary>
    /// <param name="text">The YAML text.</param>
    /// <param name="methods">What the methods that its stages may name ask of them, by name.</param>
    public static RouteReading Read(string text, IReadOnlyDictionary<string, MethodRequirements> methods)
    {
        ArgumentNullException.ThrowIfNull(methods);
        return Parse(text, methods);
    }

    /// <summary>
    /// Reads a route that was loaded before. What its methods ask of its stages was judged then and is not asked again: a method that has
    /// become stricter since must not make the parts unreadable that were started under it.
    /// </summary>
    public static RouteReading ReadKept(string text) => Parse(text, null);

    private static RouteReading Parse(string text, IReadOnlyDictionary<string, MethodRequirements>? methods)
    {
        var problems = new List<RouteProblem>();
        var root = PlainYaml.Read(text, problems);
        var route = root is not null ? ReadRoute(new YamlMap(root, RouteTexts.TheRoute, problems), text, methods, problems) : null;
        return new(problems.Count == 0 ? route : null, [.. problems.OrderBy(p => p.Line)]) { Named = NamedKind.In(root) };
    }

    private static Route ReadRoute(
        YamlMap map,
        string text,
        IReadOnlyDictionary<string, MethodRequirements>? methods,
        List<RouteProblem> problems
    )
    {
        var stages = new List<Stage>();
        var route = new Route(
            map.Text("model"),
            map.Text("kind"),
            map.OptionalWhole("revision", atLeast: 1) ?? 1,
            map.Text("title"),
            map.Text("serialPrefix"),
            map.Text("author"),
            map.OptionalText("approvedBy") ?? "",
            map.Date("effectiveFrom"),
            stages,
            text,
            Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))
        )
        {
            Reason = map.OptionalText("reason") ?? "",
        };
        foreach (var stage in map.Maps("stages", RouteTexts.AStage))
        {
            stages.Add(StageText.Read(stage, stages, methods));
        }

        map.NothingElse();
        CheckNames(route, map);
        if (stages.Count == 0 && problems.Count == 0)
        {
            map.Problem(RouteTexts.RouteNeedsAtLeastOneStage);
        }

        return route;
    }

    private static void CheckNames(Route route, YamlMap map)
    {
        if (string.Equals(route.Author, route.ApprovedBy, StringComparison.OrdinalIgnoreCase) && route.Author != "")
        {
            map.ProblemAt("approvedBy", RouteTexts.MayNotApproveTheirOwn(route.Author));
        }

        map.MustMatch("model", ModelPattern(), RouteTexts.LettersDigitsAndHyphens);
        map.MustMatch("kind", KindPattern(), RouteTexts.SmallLettersAndHyphens);
        map.MustMatch("serialPrefix", PrefixPattern(), RouteTexts.OneToThreeLetters);
    }

    [GeneratedRegex(@"^[a-z][a-z-]{1,39}\z")]
    private static partial Regex KindPattern();

    [GeneratedRegex(@"^[A-Za-z0-9-]{1,40}\z")]
    private static partial Regex ModelPattern();

    [GeneratedRegex(@"^[A-Za-z]{1,3}\z")]
    private static partial Regex PrefixPattern();
}
