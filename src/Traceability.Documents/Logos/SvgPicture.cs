using System.Xml;
using System.Xml.Linq;
using PdfSharp.Drawing;

namespace Traceability.Documents.Logos;

/// <summary>
/// An SVG of plain shapes, read once and drawn at any size (SVG 1.1, chapters 8 to 11; no text, gradients or references).
/// </summary>
internal sealed class SvgPicture
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private readonly IReadOnlyList<SvgShape> shapes;
    private readonly XRect box;

    private SvgPicture(IReadOnlyList<SvgShape> shapes, XRect box) => (this.shapes, this.box) = (shapes, box);

    public double Width => box.Width;

    public double Height => box.Height;

    /// <exception cref="LogoException">The file cannot be a logo.</exception>
    public static SvgPicture Read(byte[] bytes)
    {
        var root = Parse(bytes).Root!;
        if (root.Name != Svg + "svg")
            throw new LogoException(LogoFault.NotAPicture);
        SvgRules.Check(root);
        var box = BoxOf(root);
        var shapes = SvgShapes.Of(root, Svg).ToList();
        return shapes.Count == 0 ? throw new LogoException(LogoFault.Empty) : new(shapes, box);
    }

    public void Draw(XGraphics graphics, XRect place)
    {
        var state = graphics.Save();
        graphics.IntersectClip(place);
        graphics.TranslateTransform(place.X, place.Y);
        graphics.ScaleTransform(place.Width / box.Width, place.Height / box.Height);
        graphics.TranslateTransform(-box.X, -box.Y);
        foreach (var shape in shapes)
            shape.Draw(graphics);
        graphics.Restore(state);
    }

    private static XDocument Parse(byte[] bytes)
    {
        try
        {
            using var reader = XmlReader.Create(
                new MemoryStream(bytes),
                new XmlReaderSettings
                {
                    DtdProcessing = DtdProcessing.Parse,
                    XmlResolver = null,
                    MaxCharactersFromEntities = 1,
                }
            );
            var document = XDocument.Load(reader);
            return document.DocumentType?.InternalSubset is { Length: > 0 }
                    ? throw new LogoException(LogoFault.Declaration, document.DocumentType.Name)
                : document.Nodes().OfType<XProcessingInstruction>().FirstOrDefault() is { } instruction
                    ? throw new LogoException(LogoFault.Reference, instruction.Target)
                : document;
        }
        catch (XmlException)
        {
            throw new LogoException(LogoFault.NotAPicture);
        }
    }

    private static XRect BoxOf(XElement root)
    {
        if (root.Attribute("viewBox")?.Value is { } text)
        {
            var numbers = SvgNumbers.All(text, "viewBox");
            return numbers is [var x, var y, > 0, > 0]
                ? new(x, y, numbers[2], numbers[3])
                : throw new LogoException(LogoFault.Empty, "viewBox");
        }

        var (width, height) = (SvgNumbers.Length(root, "width", 0), SvgNumbers.Length(root, "height", 0));
        return width > 0 && height > 0 ? new(0, 0, width, height) : throw new LogoException(LogoFault.Empty, "viewBox");
    }
}
