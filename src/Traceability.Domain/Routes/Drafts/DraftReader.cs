using Traceability.Domain.Routes.Files;
using YamlDotNet.RepresentationModel;

namespace Traceability.Domain.Routes.Drafts;

/// <summary>
/// Takes a route file apart into what can be edited key by key. Values may be wrong; keys may not: a file with a key that a route has not,
/// or with a list where a text belongs, is mended as a text first.
/// </summary>
public static class DraftReader
{
    /// <summary>The draft, or null when the file cannot be taken apart; <see cref="RouteText"/> says line by line why.</summary>
    public static DraftMap? Read(string text)
    {
        List<RouteProblem> problems = [];
        var draft = new DraftMap();
        if (PlainYaml.Read(text, problems) is not { } root || problems.Count > 0 || !Fill(draft, root, DraftShape.Route))
        {
            return null;
        }

        var lines = text.ReplaceLineEndings("\n").Split('\n');
        draft.Comments = [.. lines.TakeWhile(IsComment)];
        var stages = ((YamlMappingNode)root).Children.FirstOrDefault(c => c.Key is YamlScalarNode { Value: "stages" }).Value;
        foreach (var (stage, node) in draft.Items("stages").Zip((stages as YamlSequenceNode)?.Children ?? []))
        {
            stage.Comments = [.. lines.Take((int)node.Start.Line - 1).Reverse().TakeWhile(IsComment).Reverse().Select(l => l.Trim())];
        }

        return draft;
    }

    private static bool IsComment(string line) => line.TrimStart().StartsWith('#');

    private static bool Fill(DraftMap map, YamlNode node, DraftField shape) =>
        node is YamlMappingNode pairs
        && pairs.Children.All(c =>
            c.Key is YamlScalarNode { Value: { } key }
            && (
                shape.Sort == DraftSort.Numbers
                    ? Say(map, key, c.Value)
                    : shape.Fields.FirstOrDefault(f => f.Key == key) is { } field && Take(map, field, c.Value)
            )
        );

    private static bool Take(DraftMap map, DraftField field, YamlNode node)
    {
        switch (field.Sort)
        {
            case DraftSort.Words or DraftSort.Sentences:
                map.List(field.Key).AddRange((node as YamlSequenceNode)?.Children.Select(c => (c as YamlScalarNode)?.Value ?? "") ?? []);
                return node is YamlSequenceNode list && list.Children.All(c => c is YamlScalarNode);
            case DraftSort.Items:
                return node is YamlSequenceNode items
                    && items.Children.All(i =>
                    {
                        var item = new DraftMap();
                        map.Items(field.Key).Add(item);
                        return Fill(item, i, field);
                    });
            case DraftSort.Group or DraftSort.Numbers:
                return Fill(map.Group(field.Key), node, field);
            default:
                return Say(map, field.Key, node);
        }
    }

    private static bool Say(DraftMap map, string key, YamlNode node)
    {
        map[key] = (node as YamlScalarNode)?.Value ?? "";
        return node is YamlScalarNode;
    }
}
