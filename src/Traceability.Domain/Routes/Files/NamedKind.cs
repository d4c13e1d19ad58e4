using YamlDotNet.RepresentationModel;

namespace Traceability.Domain.Routes.Files;

/// <summary>What a kind is a kind of.</summary>
public enum KindSort
{
    /// <summary>Of lots, as a slot accepts them.</summary>
    Lot,

    /// <summary>Of parts, as a slot accepts them.</summary>
    Part,

    /// <summary>Of instruments, as a stage asks for them.</summary>
    Instrument,

    /// <summary>Of the parts that the route itself makes.</summary>
    Made,
}

/// <summary>A kind that a route file names, with the line (from 1) where it stands.</summary>
public sealed record NamedKind(KindSort Sort, string Code, long Line)
{
    /// <summary>Every kind that the file names, in the order of its lines; a file that is no route names what it names.</summary>
    internal static IReadOnlyList<NamedKind> In(YamlNode? root) =>
        [
            .. Under(root, "kind")
                .Select(n => Of(KindSort.Made, n))
                .Concat(Items(root, "stages").SelectMany(OfStage))
                .OfType<NamedKind>()
                .OrderBy(k => k.Line),
        ];

    private static IEnumerable<NamedKind?> OfStage(YamlNode stage) =>
        [
            .. Items(stage, "slots")
                .SelectMany(s =>
                    Under(s, "lotKind").Select(n => Of(KindSort.Lot, n)).Concat(Under(s, "partKind").Select(n => Of(KindSort.Part, n)))
                ),
            .. Items(stage, "instrumentKinds").Select(n => Of(KindSort.Instrument, n)),
        ];

    private static NamedKind? Of(KindSort sort, YamlNode node) =>
        node is YamlScalarNode { Value: { Length: > 0 } code } ? new(sort, code, node.Start.Line) : null;

    private static IEnumerable<YamlNode> Items(YamlNode? node, string key) =>
        Under(node, key).OfType<YamlSequenceNode>().SelectMany(s => s.Children);

    private static IEnumerable<YamlNode> Under(YamlNode? node, string key) =>
        node is YamlMappingNode map
            ? map.Children.Where(c => c.Key is YamlScalarNode { Value: { } name } && name == key).Select(c => c.Value)
            : [];
}
