using System.Text.RegularExpressions;
using System.Xml.Linq;
using PdfSharp.Drawing;

namespace Traceability.Documents.Logos;

/// <summary>How a shape is filled and stroked: what it inherits, its attributes, its classes, its style (SVG 1.1, 6.4 and 11).</summary>
internal sealed partial record SvgStyle
{
    private static readonly string[] Names =
    [
        "fill",
        "stroke",
        "stroke-width",
        "fill-rule",
        "fill-opacity",
        "stroke-opacity",
        "opacity",
        "stroke-linecap",
        "stroke-linejoin",
        "display",
        "visibility",
    ];

    public static readonly SvgStyle Initial = new();

    public XColor? Fill { get; private init; } = XColors.Black;

    public XColor? Stroke { get; private init; }

    public double StrokeWidth { get; private init; } = 1;

    public double FillOpacity { get; private init; } = 1;

    public double StrokeOpacity { get; private init; } = 1;

    public bool EvenOdd { get; private init; }

    public XLineCap Cap { get; private init; } = XLineCap.Flat;

    public XLineJoin Join { get; private init; } = XLineJoin.Miter;

    public bool Hidden { get; private init; }

    /// <summary>What holds for an element inside another with this style.</summary>
    public SvgStyle Inside(XElement element, IReadOnlyDictionary<string, string> classes)
    {
        var style = this;
        var declared = Names
            .Select(name => (name, value: element.Attribute(name)?.Value))
            .Where(d => d.value is not null)
            .Concat(
                (element.Attribute("class")?.Value ?? "")
                    .Split(' ', StringSplitOptions.RemoveEmptyEntries)
                    .SelectMany(c => Declarations(classes.GetValueOrDefault(c, "")))
            )
            .Concat(Declarations(element.Attribute("style")?.Value ?? ""));
        foreach (var (name, value) in declared)
            style = style.With(name, value!.Trim());
        return style;
    }

    /// <summary>The classes of a style sheet of plain class rules; anything else in it is refused.</summary>
    public static IReadOnlyDictionary<string, string> Classes(string sheet)
    {
        var classes = new Dictionary<string, string>(StringComparer.Ordinal);
        var plain = Comment().Replace(sheet, "");
        if (Rule().Replace(plain, "").Trim().Length > 0)
            throw new LogoException(LogoFault.NotDrawn, "style");
        foreach (Match rule in Rule().Matches(plain))
        {
            foreach (var name in rule.Groups["classes"].Value.Split(',', StringSplitOptions.TrimEntries).Select(c => c[1..]))
                classes[name] = classes.GetValueOrDefault(name, "") + ";" + rule.Groups["body"].Value;
        }
        return classes;
    }

    private SvgStyle With(string name, string value) =>
        (name, value) switch
        {
            (_, "inherit") => this,
            ("fill", _) => this with { Fill = SvgColour.Of(value) },
            ("stroke", _) => this with { Stroke = SvgColour.Of(value) },
            ("stroke-width", _) => this with { StrokeWidth = SvgNumbers.Parse(Px().Replace(value, ""), name) },
            ("fill-opacity", _) => this with { FillOpacity = SvgColour.Share(value, name) },
            ("stroke-opacity", _) => this with { StrokeOpacity = SvgColour.Share(value, name) },
            // Of a group it should be mixed as a whole; shape by shape differs only where shapes lie over each other.
            ("opacity", _) => this with
            {
                FillOpacity = FillOpacity * SvgColour.Share(value, name),
                StrokeOpacity = StrokeOpacity * SvgColour.Share(value, name),
            },
            ("fill-rule", _) => this with { EvenOdd = value == "evenodd" },
            ("stroke-linecap", _) => this with
            {
                Cap = value switch
                {
                    "round" => XLineCap.Round,
                    "square" => XLineCap.Square,
                    _ => XLineCap.Flat,
                },
            },
            ("stroke-linejoin", _) => this with
            {
                Join = value switch
                {
                    "round" => XLineJoin.Round,
                    "bevel" => XLineJoin.Bevel,
                    _ => XLineJoin.Miter,
                },
            },
            ("display", "none") or ("visibility", "hidden" or "collapse") => this with { Hidden = true },
            _ => this,
        };

    private static IEnumerable<(string name, string? value)> Declarations(string text) =>
        text.Split(';', StringSplitOptions.RemoveEmptyEntries)
            .Select(d => d.Split(':', 2))
            .Where(d => d.Length == 2)
            .Select(d => (d[0].Trim(), (string?)d[1].Replace("!important", "", StringComparison.Ordinal)));

    [GeneratedRegex(@"/\*.*?\*/", RegexOptions.Singleline)]
    private static partial Regex Comment();

    [GeneratedRegex(@"(?<classes>\.[\w-]+(\s*,\s*\.[\w-]+)*)\s*\{(?<body>[^{}]*)\}")]
    private static partial Regex Rule();

    [GeneratedRegex("px$")]
    private static partial Regex Px();
}
