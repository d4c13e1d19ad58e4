using System.Diagnostics;
using System.Text;
using ZXing;
using ZXing.Common;

namespace Traceability.Documents.Tests.Reading;

/// A page as grey pixels, rendered by poppler, for a code reader to look at.
internal sealed record Raster(byte[] Grey, int Width, int Height)
{
    public static Raster OfPage(byte[] pdf, int page = 1, int dotsPerInch = 150)
    {
        var folder = Directory.CreateTempSubdirectory("raster-");
        try
        {
            var path = Path.Combine(folder.FullName, "page.pdf");
            File.WriteAllBytes(path, pdf);
            var start = new ProcessStartInfo(
                "pdftoppm",
                ["-gray", "-singlefile", "-r", $"{dotsPerInch}", "-f", $"{page}", path, Path.Combine(folder.FullName, "page")]
            )
            {
                RedirectStandardError = true,
            };
            using var poppler = Process.Start(start) ?? throw new InvalidOperationException("pdftoppm of poppler-utils did not start");
            var complaint = poppler.StandardError.ReadToEnd();
            poppler.WaitForExit();
            Assert.True(poppler.ExitCode == 0, complaint);
            return Parse(File.ReadAllBytes(Path.Combine(folder.FullName, "page.pgm")));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <param name="format">The kind of code looked for.</param>
    /// <param name="alone">The picture is the code and nothing else: no search, which on a few patterns loses its way.</param>
    public string? Decode(BarcodeFormat format, bool alone = false)
    {
        var reader = new BarcodeReaderGeneric
        {
            Options = new DecodingOptions
            {
                TryHarder = true,
                PureBarcode = alone,
                PossibleFormats = [format],
            },
        };
        return reader.Decode(new RGBLuminanceSource(Grey, Width, Height, RGBLuminanceSource.BitmapFormat.Gray8))?.Text;
    }

    /// Parts of the whole, from 0 to 1.
    public Raster Crop(double left, double top, double right, double bottom)
    {
        var (x, y, w, h) = ((int)(left * Width), (int)(top * Height), (int)((right - left) * Width), (int)((bottom - top) * Height));
        var part = new byte[w * h];
        for (var row = 0; row < h; row++)
            Array.Copy(Grey, (y + row) * Width + x, part, row * w, w);
        return new Raster(part, w, h);
    }

    /// P5, width, height, greatest value, then one byte a pixel.
    private static Raster Parse(byte[] pgm)
    {
        var head = Encoding.ASCII.GetString(pgm, 0, Math.Min(64, pgm.Length)).Split(['\n', ' '], 5);
        var (width, height) = (int.Parse(head[1], null), int.Parse(head[2], null));
        return new Raster(pgm[^(width * height)..], width, height);
    }
}
