using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Traceability.Domain.Stages;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace Traceability.Domain.Routes.Files;

/// <summary>Reads a route from its text form (YAML), strictly: unknown keys, methods, units or contradictory limits are problems with their line.</summary>
public static partial class RouteText
{
    /// <summary>Reads one route. Never throws for bad text; the problems say what is wrong and where.</summary>
    public static RouteReading Read(string text)
    {
        var problems = new List<RouteProblem>();
        var stream = new YamlStream();
        try
        {
            stream.Load(new StringReader(text));
        }
        catch (YamlException broken)
        {
            return new(null, [new(broken.Start.Line, $"this is not YAML: {broken.Message}")]);
        }

        if (stream.Documents.Count == 0)
        {
            return new(null, [new(1, "the file is empty")]);
        }

        var map = new YamlMap(stream.Documents[0].RootNode, "the route", problems);
        var route = ReadRoute(map, text, problems);
        CheckReferences(route, map);
        return new(problems.Count == 0 ? route : null, [.. problems.OrderBy(p => p.Line)]);
    }

    private static Route ReadRoute(YamlMap map, string text, List<RouteProblem> problems)
    {
        var route = new Route(
            map.Text("model"), map.Text("kind"), map.OptionalWhole("revision") ?? 1, map.Text("title"), map.Text("serialPrefix"),
            map.Text("author"), map.Text("approvedBy"), map.Date("effectiveFrom"),
            [.. map.Maps("stages", "a stage").Select(s => StageText.Read(s))],
            text, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))));
        map.NothingElse();
        if (route.Author == route.ApprovedBy && route.Author != "")
        {
            map.Problem($"'{route.Author}' may not approve a route of their own");
        }

        if (!KindPattern().IsMatch(route.Kind) || !ModelPattern().IsMatch(route.Model))
        {
            map.Problem("'model' must be letters, digits and hyphens; 'kind' small letters and hyphens");
        }

        if (route.Stages.Count == 0 && problems.Count == 0)
        {
            map.Problem("a route needs at least one stage");
        }

        return route;
    }

    private static void CheckReferences(Route route, YamlMap map)
    {
        foreach (var twice in route.Stages.GroupBy(s => s.Code).Where(g => g.Count() > 1))
        {
            map.Problem($"stage '{twice.Key}' is there {twice.Count()} times");
        }

        foreach (var stage in route.Stages)
        {
            var earlier = route.Stages.TakeWhile(s => s.Code != stage.Code).Select(s => s.Code).ToHashSet();
            foreach (var name in stage.Waits.Select(w => w.AfterStage).Concat(stage.Windows.Select(w => w.AfterStage)).Concat(stage.NotByBuilderOf))
            {
                if (!earlier.Contains(name))
                {
                    map.Problem($"stage '{stage.Code}' refers to '{name}', which is not an earlier stage");
                }
            }

            if (stage.ReworkReturnsTo is { } back && back != stage.Code && !earlier.Contains(back))
            {
                map.Problem($"stage '{stage.Code}': rework returns to '{back}', which is not an earlier stage");
            }

            foreach (var problem in StageMethods.Find(stage.Method)?.ProblemsWith(stage) ?? [$"there is no method '{stage.Method}'; known: {string.Join(", ", StageMethods.Names)}"])
            {
                map.Problem($"stage '{stage.Code}': {problem}");
            }
        }
    }

    [GeneratedRegex("^[a-z][a-z-]{1,39}$")]
    private static partial Regex KindPattern();

    [GeneratedRegex("^[A-Za-z0-9-]{1,40}$")]
    private static partial Regex ModelPattern();
}
