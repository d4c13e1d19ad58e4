using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using CsCheck;
using PdfSharp.Drawing;
using Traceability.Documents.Codes;
using Traceability.Documents.Drawing;
using Traceability.Documents.Tests.Reading;
using ZXing;

namespace Traceability.Documents.Tests.Codes;

public sealed partial class CodeTests
{
    private static readonly Gen<string> PrintedCodes = Gen.String[Gen.Char["ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789.-:"], 1, 40];

    [Fact]
    public void A_reader_says_what_was_written_as_qr() =>
        PrintedCodes.Sample(
            text => Pixels(CodeMatrix.Qr(text).ToSvg("code")).Decode(BarcodeFormat.QR_CODE, alone: true) == text,
            iter: 200
        );

    [Fact]
    public void A_reader_says_what_was_written_as_data_matrix() =>
        PrintedCodes.Sample(
            text => Pixels(CodeMatrix.DataMatrix(text).ToSvg("code")).Decode(BarcodeFormat.DATA_MATRIX, alone: true) == text,
            iter: 200
        );

    [Fact]
    public void Letters_beyond_ascii_survive_a_qr_code()
    {
        Assert.Equal("Řezáč 6 µm Ω", Pixels(CodeMatrix.Qr("Řezáč 6 µm Ω").ToSvg("code")).Decode(BarcodeFormat.QR_CODE));
    }

    [Theory]
    [InlineData(true, BarcodeFormat.DATA_MATRIX)]
    [InlineData(false, BarcodeFormat.QR_CODE)]
    public void A_code_drawn_on_paper_is_read_back(bool dataMatrix, BarcodeFormat format)
    {
        var code = dataMatrix ? CodeMatrix.DataMatrix("P.K-26-0412.5") : CodeMatrix.Qr("P.K-26-0412.5");
        using var pdf = new PdfFile("Code", "en");
        pdf.AddPage(canvas => canvas.Artifact(() => code.Draw(canvas.Graphics, new XRect(40, 40, 80, 80))));

        Assert.Equal("P.K-26-0412.5", Raster.OfPage(pdf.ToBytes()).Crop(0.04, 0.03, 0.24, 0.16).Decode(format));
    }

    [Fact]
    public void The_quiet_zone_is_light()
    {
        var code = CodeMatrix.Qr("quiet");
        var picture = Pixels(code.ToSvg("code"));
        var edge = code.QuietZone * Scale;

        for (var y = 0; y < picture.Height; y++)
        {
            for (var x = 0; x < picture.Width; x++)
            {
                if (x < edge || y < edge || x >= picture.Width - edge || y >= picture.Height - edge)
                    Assert.Equal(255, picture.Grey[y * picture.Width + x]);
            }
        }
    }

    [Fact]
    public void A_text_that_no_code_can_hold_is_refused()
    {
        Assert.Throws<ArgumentException>(() => CodeMatrix.Qr(""));
        Assert.Throws<ArgumentException>(() => CodeMatrix.Qr(new string('x', 5000)));
        Assert.Throws<ArgumentException>(() => CodeMatrix.DataMatrix(new string('x', 5000)));
        Assert.Throws<ArgumentException>(() => CodeMatrix.DataMatrix("漢字"));
    }

    private const int Scale = 6;

    /// Fills the runs of the svg's path into pixels.
    private static Raster Pixels(string svg)
    {
        var element = XElement.Parse(svg);
        var size = int.Parse(element.Attribute("viewBox")!.Value.Split(' ')[2], CultureInfo.InvariantCulture);
        var grey = Enumerable.Repeat((byte)255, size * Scale * size * Scale).ToArray();
        foreach (Match run in Run().Matches(element.Elements().Last().Attribute("d")!.Value))
        {
            var (column, row, length) = (Part(run, 1), Part(run, 2), Part(run, 3));
            for (var y = row * Scale; y < (row + 1) * Scale; y++)
                Array.Fill(grey, (byte)0, y * size * Scale + column * Scale, length * Scale);
        }
        return new Raster(grey, size * Scale, size * Scale);
    }

    private static int Part(Match run, int group) => int.Parse(run.Groups[group].ValueSpan, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"M(\d+) (\d+)h(\d+)v1h-\d+z")]
    private static partial Regex Run();
}
