using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Traceability.Documents.Logos;

/// <summary>Numbers as SVG writes them: "10", "-.5", "1e2", run together where a sign or a second point parts them.</summary>
internal static partial class SvgNumbers
{
    private const double Largest = 1e6;

    public static IReadOnlyList<double> All(string text, string where)
    {
        if (Rest().Replace(Number().Replace(text, ""), "").Length > 0)
            throw new LogoException(LogoFault.NotAPicture, where);
        return [.. Number().Matches(text).Select(m => Parse(m.Value, where))];
    }

    /// A length in user units; other units than pixels have no meaning without a screen, percent none without a frame.
    public static double Length(XElement element, string attribute, double otherwise)
    {
        if (element.Attribute(attribute)?.Value.Trim() is not { Length: > 0 } text)
            return otherwise;
        var (digits, scale) = text switch
        {
            [.. var n, 'p', 'x'] => (n, 1.0),
            [.. var n, 'p', 't'] => (n, 96 / 72.0),
            [.. var n, 'm', 'm'] => (n, 96 / 25.4),
            [.. var n, 'c', 'm'] => (n, 96 / 2.54),
            [.. var n, 'i', 'n'] => (n, 96.0),
            [.. var n, '%'] when element.Name.LocalName == "svg" => (n, 0.0),
            _ => (text, 1.0),
        };
        return All(digits, attribute) is [var value] ? value * scale : throw new LogoException(LogoFault.NotAPicture, attribute);
    }

    public static double Parse(string text, string where) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && Math.Abs(value) <= Largest
            ? value
            : throw new LogoException(LogoFault.NotAPicture, where);

    [GeneratedRegex(@"[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?")]
    private static partial Regex Number();

    [GeneratedRegex(@"[\s,]+")]
    private static partial Regex Rest();
}
