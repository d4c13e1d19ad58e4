using System.Globalization;
using Microsoft.AspNetCore.Html;

namespace Traceability.Web.Features.Quality.Analyses;

/// <summary>Small drawings beside numbers. Classes and attributes only; the words beside them say the same.</summary>
public static class Drawing
{
    private const int Width = 200;

    /// <summary>
    /// A share on a line from 0 to 100 %: its interval as a bar, the share as a mark, the share of everything as a broken line.
    /// </summary>
    public static IHtmlContent Of(Share share, double? all)
    {
        if (share is not { Value: { } value, Lower: { } lower, Upper: { } upper })
        {
            return HtmlString.Empty;
        }

        var common = all is { } a ? $"""<path class="iv-all" d="M{At(a)} 0V24"/>""" : "";
        return new HtmlString(
            $"""<svg class="interval" viewBox="-4 0 {Width + 8} 24" width="{Width + 8}" height="24" aria-hidden="true" focusable="false">"""
                + $"""<path class="iv-line" d="M0 12H{Width}M0 8V16M{Width} 8V16"/>{common}"""
                + $"""<path class="iv-bar" d="M{At(lower)} 12H{At(upper)}"/>"""
                + $"""<circle class="iv-dot" cx="{At(value)}" cy="12" r="4.5"/></svg>"""
        );
    }

    /// <summary>"91.7 %".</summary>
    public static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.0} %");

    /// <summary>"61.6 to 98.5 %".</summary>
    public static string Range(Share share) => QualitySentences.FromTo(100 * share.Lower, 100 * share.Upper);

    /// <summary>A p-value: "0.031"; "below 0.001" when it is smaller.</summary>
    public static string P(double? p) =>
        p switch
        {
            null => "–",
            < 0.001 => QualitySentences.BelowThousandth,
            { } known => known.ToString("0.000", CultureInfo.InvariantCulture),
        };

    /// <summary>An odds ratio or one end of its interval; one that is left out is infinite.</summary>
    public static string Odds(double? odds) =>
        odds is { } known ? known.ToString(known >= 100 ? "0" : "0.##", CultureInfo.InvariantCulture) : "∞";

    /// <summary>A computed value with five digits that count.</summary>
    public static string Value(double value) => value.ToString("G5", CultureInfo.InvariantCulture);

    /// <summary>An index with two decimals; "∞" for an end that is left out.</summary>
    public static string Fixed(double? value) => value is { } known ? known.ToString("0.00", CultureInfo.InvariantCulture) : "∞";

    /// <summary>A bar as long as its share of the longest.</summary>
    public static IHtmlContent Bar(double share) =>
        new HtmlString(
            $"""<svg class="interval" viewBox="0 0 {Width} 14" width="{Width}" height="14" aria-hidden="true" focusable="false">"""
                + $"""<path class="pareto-bar" d="M0 7H{At(share)}"/></svg>"""
        );

    private static string At(double share) => (Math.Clamp(share, 0, 1) * Width).ToString("0.#", CultureInfo.InvariantCulture);
}
