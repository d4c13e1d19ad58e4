using System.Text;
using System.Text.RegularExpressions;

namespace Traceability.Domain.Routes.Drafts;

/// <summary>
/// Writes a draft as a route file, always alike: the same draft gives the same text, and so the same hash. What is left out or is so
/// without being said is not written.
/// </summary>
public static partial class DraftWriter
{
    /// <summary>The text of a route file.</summary>
    public static string Write(DraftMap draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        var text = new StringBuilder();
        foreach (var comment in draft.Comments)
        {
            text.Append(comment.Trim()).Append('\n');
        }

        Block(text, draft, DraftShape.Head, "");
        text.Append("stages:\n");
        foreach (var (stage, i) in draft.Items("stages").Select((s, i) => (s, i)))
        {
            text.Append(i > 0 ? "\n" : "");
            foreach (var comment in stage.Comments)
            {
                text.Append("  ").Append(comment).Append('\n');
            }

            var block = new StringBuilder();
            Block(block, stage, DraftShape.Stages, "    ");
            text.Append(block.Length == 0 ? "  - {}\n" : $"  - {block.ToString()[4..]}");
        }

        return text.ToString();
    }

    private static void Block(StringBuilder text, DraftMap map, DraftField shape, string indent)
    {
        foreach (var field in shape.Fields.Where(f => IsSaid(map, f)))
        {
            text.Append(indent).Append(field.Key).Append(':');
            switch (field.Sort)
            {
                case DraftSort.Items:
                    text.Append('\n');
                    foreach (var item in map.Items(field.Key))
                    {
                        text.Append(indent).Append("  - ").Append(Flow(item, field)).Append('\n');
                    }

                    break;
                case DraftSort.Sentences:
                    text.Append('\n');
                    foreach (var sentence in map.List(field.Key))
                    {
                        text.Append(indent).Append("  - ").Append(Scalar(sentence, false)).Append('\n');
                    }

                    break;
                case DraftSort.Group:
                    text.Append('\n');
                    Block(text, map.Group(field.Key), field, indent + "  ");
                    break;
                case DraftSort.Text:
                    text.Append(' ').Append(Scalar(map[field.Key], false)).Append('\n');
                    break;
                default:
                    text.Append(' ').Append(Inline(map, field)).Append('\n');
                    break;
            }
        }
    }

    private static string Flow(DraftMap map, DraftField shape) =>
        $"{{{string.Join(", ", shape.Fields.Where(f => IsSaid(map, f)).Select(f => $"{f.Key}: {Inline(map, f)}"))}}}";

    private static string Inline(DraftMap map, DraftField field) =>
        field.Sort switch
        {
            DraftSort.Words => $"[{string.Join(", ", map.List(field.Key).Select(t => Scalar(t, true)))}]",
            DraftSort.Numbers => Numbers(map.Group(field.Key)),
            _ => Scalar(map[field.Key], true),
        };

    private static string Numbers(DraftMap numbers) =>
        $"{{{string.Join(", ", numbers.Names.Select(n => $"{Scalar(n, true)}: {Scalar(numbers[n], true)}"))}}}";

    private static bool IsSaid(DraftMap map, DraftField field) =>
        field.Sort switch
        {
            DraftSort.Words or DraftSort.Sentences => map.List(field.Key).Count > 0,
            DraftSort.Items => map.Items(field.Key).Count > 0,
            DraftSort.Group or DraftSort.Numbers => !map.Group(field.Key).IsEmpty,
            DraftSort.Flag => map[field.Key] != "" && map[field.Key] != (field.Otherwise ? "true" : "false"),
            _ => map[field.Key] != "",
        };

    /// <summary>A text as YAML: bare where it can be misread as nothing else, else in double quotes.</summary>
    private static string Scalar(string value, bool inFlow) =>
        (inFlow ? BareInFlow() : Bare()).IsMatch(value) ? value : $"\"{Escaped(value)}\"";

    private static string Escaped(string value) =>
        value
            .Replace("\\", "\\\\", StringComparison.Ordinal)
            .Replace("\"", "\\\"", StringComparison.Ordinal)
            .Replace("\r", "", StringComparison.Ordinal)
            .Replace("\n", "\\n", StringComparison.Ordinal)
            .Replace("\t", "\\t", StringComparison.Ordinal);

    [GeneratedRegex(@"^(?:-?[\p{L}\p{Nd}_.]|\()(?:[\p{L}\p{M}\p{Nd}_.,;()/°%²³±µΩ+=<>'*!?-]| (?=[^ #:]))*\z")]
    private static partial Regex Bare();

    [GeneratedRegex(@"^-?[\p{L}\p{Nd}_.](?:[\p{L}\p{M}\p{Nd}_.()/°%²³±µΩ+=<>-]| (?=[^ #:]))*\z")]
    private static partial Regex BareInFlow();
}
