using YamlDotNet.Core;
using YamlDotNet.Core.Events;
using YamlDotNet.RepresentationModel;

namespace Traceability.Domain.Routes.Files;

/// <summary>
/// Reads the YAML of one document, without what a route has no use for: aliases, which can be made to refer to themselves, and deep
/// nesting, which the tree is built from by recursion: either could end the whole process, past any catch.
/// </summary>
internal static class PlainYaml
{
    /// <summary>A route is five levels deep.</summary>
    private const int DeepestNesting = 20;

    /// <summary>The root of the document; null, with the problem noted, when there is none.</summary>
    public static YamlNode? Read(string text, List<RouteProblem> problems)
    {
        var stream = new YamlStream();
        var parser = new GuardedParser(new Parser(new StringReader(text)));
        try
        {
            stream.Load(parser);
        }
        catch (YamlException broken)
        {
            problems.Add(new(Math.Max(1, broken.Start.Line), RouteTexts.NotYaml(broken.Message)));
            return null;
        }
        catch (Exception odd) when (odd is InvalidOperationException or ArgumentException or FormatException or IndexOutOfRangeException)
        {
            // On some broken texts the library itself stumbles; whatever it says then is no use to a person.
            problems.Add(new(Math.Max(1, parser.Current?.End.Line ?? 1), RouteTexts.YamlBreaksOff));
            return null;
        }

        if (stream.Documents.Count == 0)
        {
            problems.Add(new(1, RouteTexts.FileIsEmpty));
            return null;
        }

        foreach (var further in stream.Documents.Skip(1))
        {
            problems.Add(new(further.RootNode.Start.Line, RouteTexts.OneRouteInAFile));
        }

        return stream.Documents[0].RootNode;
    }

    private sealed class GuardedParser(IParser inner) : IParser
    {
        private int depth;

        public ParsingEvent? Current => inner.Current;

        public bool MoveNext()
        {
            var moved = inner.MoveNext();
            depth += inner.Current?.NestingIncrease ?? 0;
            return (moved, inner.Current) switch
            {
                (true, AnchorAlias alias) => throw new YamlException(
                    alias.Start,
                    alias.End,
                    $"a route has no aliases: write out what '*{alias.Value}' stands for"
                ),
                (true, { } deep) when depth > DeepestNesting => throw new YamlException(
                    deep.Start,
                    deep.End,
                    "it is nested too deeply for a route"
                ),
                _ => moved,
            };
        }
    }
}
