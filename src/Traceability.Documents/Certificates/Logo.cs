using PdfSharp.Drawing;
using Traceability.Documents.Drawing;
using Traceability.Documents.Logos;

namespace Traceability.Documents.Certificates;

/// <summary>The workshop's logo at the head of a certificate, as large as fits its place and never distorted.</summary>
internal sealed class Logo : IDisposable
{
    private const double MostWidth = 170,
        MostHeight = 46;

    private readonly MemoryStream? stream;
    private readonly XImage? image;
    private readonly SvgPicture? picture;

    private Logo(byte[] bytes)
    {
        if (!LogoFile.IsPng(bytes))
        {
            picture = SvgPicture.Read(bytes);
            return;
        }

        stream = new MemoryStream(bytes, 0, bytes.Length, writable: false, publiclyVisible: true);
        image = XImage.FromStream(stream);
    }

    /// <param name="bytes">A file that <see cref="LogoFile.Check"/> has found good.</param>
    public static Logo Of(byte[] bytes) => new(bytes);

    public Strip Strip(string workshop)
    {
        var (wide, high) = picture is null ? (image!.PixelWidth, (double)image.PixelHeight) : (picture.Width, picture.Height);
        var scale = Math.Min(MostWidth / wide, MostHeight / high);
        return new(
            high * scale,
            (canvas, top) =>
            {
                var place = new XRect(Sheet.Margin, top, wide * scale, high * scale);
                canvas.Figure($"Logo of {workshop}".Trim(), place, () => Draw(canvas.Graphics, place));
            }
        );
    }

    public void Dispose()
    {
        image?.Dispose();
        stream?.Dispose();
    }

    private void Draw(XGraphics graphics, XRect place)
    {
        if (picture is null)
            graphics.DrawImage(image!, place);
        else
            picture.Draw(graphics, place);
    }
}
