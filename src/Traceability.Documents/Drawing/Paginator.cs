namespace Traceability.Documents.Drawing;

/// <summary>A strip with its place on a page.</summary>
internal readonly record struct PlacedStrip(Strip Strip, double Top, bool Repeated);

/// <summary>Shares strips out over pages.</summary>
internal static class Paginator
{
    /// <param name="strips">The document.</param>
    /// <param name="top">Top of the room on a page, given its number from 0.</param>
    /// <param name="bottom">Bottom of the room.</param>
    public static IReadOnlyList<IReadOnlyList<PlacedStrip>> Paginate(IReadOnlyList<Strip> strips, Func<int, double> top, double bottom)
    {
        List<List<PlacedStrip>> pages =
        [
            [],
        ];
        var y = top(0);
        for (var i = 0; i < strips.Count; )
        {
            var group = Together(strips, i);
            var height = strips.Skip(i).Take(group).Sum(strip => strip.Height);
            if (y + height > bottom && pages[^1].Any(placed => !placed.Repeated))
            {
                pages.Add([]);
                y = top(pages.Count - 1);
                while (group > 1 && strips[i].IsSpace)
                    (i, group) = (i + 1, group - 1);
                if (strips[i].Heading is { } heading)
                {
                    pages[^1].Add(new(heading, y, Repeated: true));
                    y += heading.Height;
                }
            }
            for (var end = i + group; i < end; i++)
            {
                if (strips[i].IsSpace && pages[^1].Count == 0 && pages.Count > 1)
                    continue;
                pages[^1].Add(new(strips[i], y, Repeated: false));
                y += strips[i].Height;
            }
        }
        return pages;
    }

    /// How many strips from here on must share a page: a chain of those kept with their next, and that next one.
    private static int Together(IReadOnlyList<Strip> strips, int from)
    {
        var count = 1;
        while (from + count < strips.Count && (strips[from + count - 1].KeepWithNext || strips[from + count - 1].IsSpace))
            count++;
        return count;
    }
}
