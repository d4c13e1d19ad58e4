using Microsoft.AspNetCore.Html;

namespace Traceability.Web.Features.Shared;

/// <summary>
/// Small drawings of our own that tell states apart by shape, beside their word and colour. Drawn in the colour of the text.
/// </summary>
public static class Marks
{
    private static readonly Dictionary<string, string> Shapes = new()
    {
        ["ok"] = """<circle cx="8" cy="8" r="6.5"/><path d="M5 8.2l2.1 2.2L11 5.9"/>""",
        ["stop"] = """<path d="M5.2 1.5h5.6l3.7 3.7v5.6l-3.7 3.7H5.2l-3.7-3.7V5.2z"/><path d="M5.6 5.6l4.8 4.8M10.4 5.6l-4.8 4.8"/>""",
        ["wait"] =
            """<path d="M3.5 1.5h9M3.5 14.5h9M4.5 1.5c0 4 3 5 3.5 6.5C7.5 9.5 4.5 10.5 4.5 14.5"""
            + """M11.5 1.5c0 4-3 5-3.5 6.5.5 1.5 3.5 2.5 3.5 6.5"/>""",
        ["go"] = """<path d="M3 2l10.5 6L3 14z"/>""",
        ["ask"] = """<path d="M1.5 3h13v8.5H9L5.5 14.5v-3h-4z"/><path d="M5 6h6M5 8.5h4"/>""",
        ["outside"] = """<path d="M1.5 4.5h13M1.5 11.5h13"/><circle cx="8" cy="1.8" r="1.3" fill="currentColor"/>""",
        ["later"] = """<circle cx="8" cy="8" r="6" stroke-dasharray="2.2 2.2"/>""",
        ["held"] = """<rect x="2" y="2" width="12" height="12"/><path d="M6 5v6M10 5v6"/>""",
        ["gone"] = """<path d="M2.5 13.5L13 3M6 3h7v7"/>""",
        ["scrapped"] = """<path d="M2 2l12 12M14 2L2 14"/>""",
        ["inside"] = """<circle cx="8" cy="8" r="6.5"/><circle cx="8" cy="8" r="2.5" fill="currentColor"/>""",
        ["work"] = """<circle cx="8" cy="8" r="6.5"/><path d="M8 4v4.3l3 1.7"/>""",
        ["warn"] = """<path d="M8 1.5l7 12.5H1z"/><path d="M8 6v4M8 11.6v.8"/>""",
        ["plus"] = """<path d="M8 2v12M2 8h12"/>""",
        ["changed"] = """<path d="M2 5h10M9 2l3 3-3 3M14 11H4M7 8l-3 3 3 3"/>""",
        ["note"] = """<path d="M3 1.5h7l3 3v10H3z"/><path d="M5.5 7h5M5.5 10h5"/>""",
    };

    private static readonly Dictionary<string, HtmlString> Drawn = Shapes.ToDictionary(
        s => s.Key,
        s => new HtmlString(
            $"""<svg class="mark" viewBox="0 0 16 16" width="16" height="16" fill="none" stroke="currentColor" """
                + $"""stroke-width="1.6" stroke-linecap="round" stroke-linejoin="round" """
                + $"""aria-hidden="true" focusable="false">{s.Value}</svg>"""
        )
    );

    /// <summary>The brass ring with its film, seen from the front.</summary>
    public static readonly IHtmlContent Ring = new HtmlString(
        """<svg class="ring" viewBox="0 0 32 32" width="32" height="32" fill="none" aria-hidden="true" focusable="false">"""
            + """<circle class="ring-film" cx="16" cy="16" r="10.5"/>"""
            + """<circle class="ring-brass" cx="16" cy="16" r="12.5" stroke-width="4"/>"""
            + """<path class="ring-light" d="M9.5 17a6.7 6.7 0 0 1 5-7.2" stroke-width="1.2" stroke-linecap="round"/></svg>"""
    );

    /// <summary>The drawing of that name.</summary>
    public static IHtmlContent Of(string name) => Drawn[name];
}
