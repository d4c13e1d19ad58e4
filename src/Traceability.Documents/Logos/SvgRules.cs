using System.Xml.Linq;

namespace Traceability.Documents.Logos;

/// <summary>What an SVG may hold to be a logo. It is a list of what may stay, so that what nobody thought of is refused.</summary>
internal static class SvgRules
{
    public static readonly HashSet<string> Drawn = ["path", "rect", "circle", "ellipse", "line", "polyline", "polygon"];

    private const int DeepestNesting = 60,
        MostElements = 5000;

    private static readonly HashSet<string> Around = ["svg", "g", "title", "desc", "metadata", "defs", "style"];
    private static readonly HashSet<string> Foreign =
    [
        "foreignObject",
        "iframe",
        "html",
        "body",
        "embed",
        "object",
        "audio",
        "video",
        "canvas",
    ];
    private static readonly HashSet<string> Referring = ["use", "image", "a", "feImage", "link", "mpath", "tref"];
    private static readonly HashSet<string> Running =
    [
        "script",
        "animate",
        "animateMotion",
        "animateTransform",
        "set",
        "handler",
        "listener",
    ];

    /// <summary>Looks at every element and attribute, also of parts that are not drawn: a browser reads them.</summary>
    public static void Check(XElement root)
    {
        var elements = root.DescendantsAndSelf().ToList();
        if (elements.Count > MostElements || elements.Exists(e => e.Ancestors().Take(DeepestNesting).Count() == DeepestNesting))
            throw new LogoException(LogoFault.NotDrawn, "…");
        foreach (var element in elements)
        {
            CheckName(element, root.Name.Namespace);
            foreach (var attribute in element.Attributes())
                CheckAttribute(attribute);
            if (element.Name.LocalName == "style")
                CheckStyle(element.Value, "style");
        }
    }

    private static void CheckName(XElement element, XNamespace svg)
    {
        var name = element.Name.LocalName;
        if (Running.Contains(name))
            throw new LogoException(LogoFault.Script, name);
        if (Foreign.Contains(name) || element.Name.NamespaceName.EndsWith("xhtml", StringComparison.OrdinalIgnoreCase))
            throw new LogoException(LogoFault.ForeignContent, name);
        if (Referring.Contains(name))
            throw new LogoException(LogoFault.Reference, name);
        // What drawing programs note for themselves belongs to other namespaces and is neither drawn here nor in browsers.
        if (element.Name.Namespace == svg && !Drawn.Contains(name) && !Around.Contains(name))
            throw new LogoException(LogoFault.NotDrawn, name);
    }

    private static void CheckAttribute(XAttribute attribute)
    {
        var name = attribute.Name.LocalName;
        if (name.StartsWith("on", StringComparison.OrdinalIgnoreCase))
            throw new LogoException(LogoFault.Script, name);
        if (name is "href" or "src" or "base")
            throw new LogoException(LogoFault.Reference, name);
        if (attribute.IsNamespaceDeclaration)
            return;
        if (attribute.Value.Contains("javascript:", StringComparison.OrdinalIgnoreCase))
            throw new LogoException(LogoFault.Script, name);
        CheckStyle(attribute.Value, name);
    }

    private static void CheckStyle(string text, string where)
    {
        if (text.Contains("@import", StringComparison.OrdinalIgnoreCase) || text.Contains('\\', StringComparison.Ordinal))
            throw new LogoException(LogoFault.Reference, where);
        var url = text.IndexOf("url(", StringComparison.OrdinalIgnoreCase);
        if (url >= 0)
            throw new LogoException(LogoFault.Reference, $"{where}: {text[url..Math.Min(text.Length, url + 40)]}");
    }
}
