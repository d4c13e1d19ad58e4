using System.Globalization;
using System.Text;
using System.Xml.Linq;
using Traceability.Documents.Drawing;

namespace Traceability.Documents.Codes;

/// <summary>A code as an svg element for a page.</summary>
public static class CodeSvg
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>Dark on light whatever the page's scheme: readers expect it so. One user unit is one module.</summary>
    /// <param name="code">The code.</param>
    /// <param name="title">What it is, for those who do not see it.</param>
    public static string ToSvg(this CodeMatrix code, string title)
    {
        var path = new StringBuilder();
        foreach (var (column, row, length) in code.Runs())
            path.Append(CultureInfo.InvariantCulture, $"M{column + code.QuietZone} {row + code.QuietZone}h{length}v1h-{length}z");

        return new XElement(
            Svg + "svg",
            new XAttribute("class", "code"),
            new XAttribute("role", "img"),
            new XAttribute("viewBox", $"0 0 {code.Size} {code.Size}"),
            new XAttribute("width", 4 * code.Size),
            new XAttribute("height", 4 * code.Size),
            new XAttribute("shape-rendering", "crispEdges"),
            new XElement(Svg + "title", XmlText.Clean(title)),
            new XElement(
                Svg + "rect",
                new XAttribute("width", code.Size),
                new XAttribute("height", code.Size),
                new XAttribute("fill", "#fff")
            ),
            new XElement(Svg + "path", new XAttribute("d", path), new XAttribute("fill", "#000"))
        ).ToString(SaveOptions.DisableFormatting);
    }
}
