using System.Buffers;
using System.Globalization;
using System.Text;

namespace Traceability.Documents.Drawing;

/// <summary>
/// Breaks text into lines of a width: between words where it can, after a hyphen or slash where it must, else between letters.
/// </summary>
internal static class LineBreaker
{
    private static readonly SearchValues<char> BreakAfter = SearchValues.Create("-/._:,;+&=?");

    public static IReadOnlyList<string> Break(string? text, TextStyle style, double width)
    {
        List<string> lines = [];
        foreach (var paragraph in (text ?? "").ReplaceLineEndings("\n").Split('\n'))
            BreakParagraph(Printable(paragraph), style, width, lines);
        return lines;
    }

    /// As many lines as there is room for; an ellipsis says that there were more.
    public static IReadOnlyList<string> Break(string? text, TextStyle style, double width, int most)
    {
        var lines = Break(text, style, width);
        return lines.Count <= most ? lines
            : most <= 0 ? []
            : [.. lines.Take(most - 1), style.CutTo(lines[most - 1] + " …", width)];
    }

    /// What a font cannot show (control characters, half surrogates) becomes a space or the replacement character.
    public static string Printable(string text)
    {
        var clean = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
            clean.Append(Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control ? " " : rune.ToString());
        return clean.ToString();
    }

    private static void BreakParagraph(string paragraph, TextStyle style, double width, List<string> lines)
    {
        var line = "";
        foreach (var word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (style.WidthOf(longer) <= width)
            {
                line = longer;
                continue;
            }
            if (line.Length > 0)
                lines.Add(line);
            line = BreakWord(word, style, width, lines);
        }
        lines.Add(line);
    }

    /// Puts all full lines of an over-long word away and hands back the rest.
    private static string BreakWord(string word, TextStyle style, double width, List<string> lines)
    {
        while (style.WidthOf(word) > width)
        {
            var fitting = FittingLength(word, style, width);
            var seam = word.AsSpan(0, fitting).LastIndexOfAny(BreakAfter) + 1;
            var cut = seam >= fitting / 2 && seam > 0 ? seam : fitting;
            lines.Add(word[..cut]);
            word = word[cut..];
        }
        return word;
    }

    /// At least one letter, so that even a column too narrow for it ends.
    private static int FittingLength(string word, TextStyle style, double width)
    {
        var (length, used) = (0, 0.0);
        foreach (var element in StringInfo.ParseCombiningCharacters(word).Append(word.Length).Skip(1))
        {
            used = style.WidthOf(word.AsSpan(0, element));
            if (used > width)
                break;
            length = element;
        }
        return length > 0 ? length : StringInfo.GetNextTextElementLength(word);
    }
}
