namespace Traceability.Domain.Routes.Comparison;

/// <summary>A line of two files laid side by side.</summary>
/// <param name="Text">The line.</param>
/// <param name="Left">Its number in the left file, from 1; null when only the right one has it.</param>
/// <param name="Right">Its number in the right file, from 1; null when only the left one has it.</param>
public sealed record FileLine(string Text, int? Left, int? Right);

/// <summary>
/// Two route files line by line: the lines that both have in one order, with those between that only one has. As many lines as can be are
/// taken for the same (longest common subsequence); of a changed line the old one stands before the new one. Checked by
/// <c>FileLinesTests</c>.
/// </summary>
public static class FileLines
{
    /// <summary>Two files of 2 000 lines; longer ones, which no route is, are not laid side by side but one after the other.</summary>
    private const long MostPairs = 4_000_000;

    /// <summary>All lines of both, in order.</summary>
    public static IReadOnlyList<FileLine> Of(string left, string right)
    {
        ArgumentNullException.ThrowIfNull(left);
        ArgumentNullException.ThrowIfNull(right);
        var (l, r) = (Lines(left), Lines(right));
        if ((long)l.Length * r.Length > MostPairs)
        {
            return [.. l.Select((t, n) => new FileLine(t, n + 1, null)), .. r.Select((t, n) => new FileLine(t, null, n + 1))];
        }

        var common = Common(l, r);
        List<FileLine> all = [];
        var (i, j) = (0, 0);
        while (i < l.Length || j < r.Length)
        {
            if (i < l.Length && j < r.Length && l[i] == r[j])
            {
                all.Add(new(l[i], ++i, ++j));
            }
            else if (j == r.Length || (i < l.Length && common[i + 1, j] >= common[i, j + 1]))
            {
                all.Add(new(l[i], ++i, null));
            }
            else
            {
                all.Add(new(r[j], null, ++j));
            }
        }

        return all;
    }

    /// <summary>The lines in which they differ, each with so many of the others before and after it.</summary>
    public static IReadOnlyList<FileLine> Around(IReadOnlyList<FileLine> lines, int context)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var differing = lines
            .Select((line, i) => (line, i))
            .Where(x => x.line.Left is null || x.line.Right is null)
            .Select(x => x.i)
            .ToList();
        return [.. lines.Where((_, i) => differing.Exists(d => Math.Abs(d - i) <= context))];
    }

    /// <summary>At [i, j] how many lines the two have in common from there to their ends.</summary>
    private static int[,] Common(string[] left, string[] right)
    {
        var common = new int[left.Length + 1, right.Length + 1];
        for (var i = left.Length - 1; i >= 0; i--)
        {
            for (var j = right.Length - 1; j >= 0; j--)
            {
                common[i, j] = left[i] == right[j] ? common[i + 1, j + 1] + 1 : Math.Max(common[i + 1, j], common[i, j + 1]);
            }
        }

        return common;
    }

    private static string[] Lines(string text) => text.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n');
}
