using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Html;
using Traceability.Domain.Quality.Charts;

namespace Traceability.Web.Features.Quality.ControlCharts;

/// <summary>
/// One mark of a chart: where it stands along the chart, its value, the part it leads to, its words, and whether it is marked.
/// </summary>
public sealed record Mark(int Position, double Value, string Serial, string Words, bool Marked);

/// <summary>
/// A run chart with its limits as SVG: classes only. Points lead to their parts by pointer; for the keyboard the marked points are also
/// listed beside the chart, so that nobody has to step through two thousand points.
/// </summary>
public static class ChartDrawing
{
    private const int Left = 56,
        Right = 8,
        Top = 8,
        Bottom = 22;

    /// <summary>Above this many points only marked ones are drawn as dots; the line shows the others.</summary>
    private const int MostDots = 400;

    /// <summary>Draws the chart; <paramref name="fit"/> are the limits of the route, drawn when given.</summary>
    public static IHtmlContent Of(
        string label,
        IReadOnlyList<Mark> marks,
        ChartLimits limits,
        (double? Lower, double? Upper) fit,
        int width,
        int height
    )
    {
        if (marks.Count == 0)
        {
            return HtmlString.Empty;
        }

        var ends = marks
            .Select(m => m.Value)
            .Concat([limits.Lower, limits.Upper])
            .Concat(new[] { fit.Lower, fit.Upper }.OfType<double>())
            .ToList();
        double low = ends.Min(),
            high = ends.Max(),
            room = high > low ? (high - low) * 0.05 : 1;
        (low, high) = (low - room, high + room);
        int first = marks[0].Position,
            last = Math.Max(marks[^1].Position, first + 1);
        var svg = new StringBuilder();
        svg.Append(
            CultureInfo.InvariantCulture,
            $"""<svg class="run-chart" viewBox="0 0 {width} {height}" width="{width}" height="{height}" """
                + $"""role="group" aria-label="{HtmlEncoder.Default.Encode(label)}">"""
        );
        Level("run-fit", fit.Lower, "");
        Level("run-fit", fit.Upper, "");
        Level("run-limit", limits.Lower, Number(limits.Lower));
        Level("run-centre", limits.Centre, Number(limits.Centre));
        Level("run-limit", limits.Upper, Number(limits.Upper));
        svg.Append("""<path class="run-line" d="M""").AppendJoin('L', marks.Select(m => $"{X(m.Position)} {Y(m.Value)}")).Append("\"/>");
        foreach (var mark in marks.Where(m => m.Marked || marks.Count <= MostDots))
        {
            var words = HtmlEncoder.Default.Encode(mark.Words);
            var shape = mark.Marked
                ? $"""<path class="run-marked" d="M{X(mark.Position)} {Y(mark.Value)}m0-6l6 6l-6 6l-6-6z"/>"""
                : $"""<circle class="run-dot" cx="{X(mark.Position)}" cy="{Y(mark.Value)}" r="3.5"/>""";
            svg.Append(
                CultureInfo.InvariantCulture,
                $"""<a href="/parts/{Uri.EscapeDataString(mark.Serial)}" tabindex="-1" aria-label="{words}">"""
                    + $"""<title>{words}</title>{shape}</a>"""
            );
        }

        svg.Append(
            CultureInfo.InvariantCulture,
            $"""<text class="run-text" x="{Left}" y="{height - 6}">{first}</text>"""
                + $"""<text class="run-text" x="{width - Right}" y="{height - 6}" text-anchor="end">{last}</text></svg>"""
        );
        return new HtmlString(svg.ToString());

        void Level(string look, double? value, string words)
        {
            if (value is { } at)
            {
                svg.Append(CultureInfo.InvariantCulture, $"""<path class="{look}" d="M{Left} {Y(at)}H{width - Right}"/>""");
                svg.Append(
                    words.Length == 0
                        ? ""
                        : $"""<text class="run-text" x="{Left - 6}" y="{Y(at)}" dy=".35em" text-anchor="end">{words}</text>"""
                );
            }
        }

        string X(int position) =>
            (Left + (width - Left - Right) * (double)(position - first) / (last - first)).ToString("0.#", CultureInfo.InvariantCulture);

        string Y(double value) =>
            (Top + (height - Top - Bottom) * (high - value) / (high - low)).ToString("0.#", CultureInfo.InvariantCulture);
    }

    private static string Number(double value) => value.ToString("G4", CultureInfo.InvariantCulture);
}
