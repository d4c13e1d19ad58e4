using PdfSharp.Drawing;
using ZXing;
using ZXing.Common;
using ZXing.Datamatrix;
using ZXing.Datamatrix.Encoder;
using ZXing.QrCode;
using ZXing.QrCode.Internal;

namespace Traceability.Documents.Codes;

/// <summary>A two-dimensional code as a grid of dark and light modules, with the quiet zone that a reader needs around it.</summary>
public sealed class CodeMatrix
{
    /// <summary>
    /// Light modules to keep on every side: 4 for QR (ISO/IEC 18004), 1 for Data Matrix (ISO/IEC 16022). Both from memory.
    /// </summary>
    private const int QrQuietZone = 4,
        DataMatrixQuietZone = 1;

    private readonly BitMatrix _modules;

    private CodeMatrix(string text, BitMatrix modules, int quietZone)
    {
        Text = text;
        _modules = modules;
        QuietZone = quietZone;
    }

    /// <summary>What a reader will say.</summary>
    public string Text { get; }

    /// <summary>Light modules on every side.</summary>
    public int QuietZone { get; }

    /// <summary>Modules along one edge, quiet zones included.</summary>
    public int Size => _modules.Width + 2 * QuietZone;

    /// <summary>A QR code that survives the loss of about 15 % of its area (level M).</summary>
    /// <exception cref="ArgumentException">The text is empty or longer than a QR code can hold (2331 bytes at this level).</exception>
    public static CodeMatrix Qr(string text)
    {
        var hints = new Dictionary<EncodeHintType, object>
        {
            [EncodeHintType.MARGIN] = 0,
            [EncodeHintType.ERROR_CORRECTION] = ErrorCorrectionLevel.M,
        };
        // Naming the character set costs a header that some scanners stumble over; plain ASCII does without.
        if (!System.Text.Ascii.IsValid(text))
            hints[EncodeHintType.CHARACTER_SET] = "UTF-8";
        return Encode(text, () => new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, 0, 0, hints), QrQuietZone);
    }

    /// <summary>A square Data Matrix code (ECC 200): smaller than QR for a short code on a small part.</summary>
    /// <exception cref="ArgumentException">The text is empty, too long, or holds letters beyond ISO 8859-1.</exception>
    public static CodeMatrix DataMatrix(string text)
    {
        var hints = new Dictionary<EncodeHintType, object>
        {
            [EncodeHintType.MARGIN] = 0,
            [EncodeHintType.DATA_MATRIX_SHAPE] = SymbolShapeHint.FORCE_SQUARE,
        };
        return Encode(text, () => new DataMatrixWriter().encode(text, BarcodeFormat.DATA_MATRIX, 0, 0, hints), DataMatrixQuietZone);
    }

    /// <summary>Draws the code, quiet zone included, as one filled path into the largest square in the rectangle's corner.</summary>
    public void Draw(XGraphics graphics, XRect rect)
    {
        var module = Math.Min(rect.Width, rect.Height) / Size;
        var path = new XGraphicsPath { FillMode = XFillMode.Winding };
        foreach (var (column, row, length) in Runs())
            path.AddRectangle(rect.X + (QuietZone + column) * module, rect.Y + (QuietZone + row) * module, length * module, module);
        graphics.DrawPath(XBrushes.Black, path);
    }

    /// <summary>Dark modules row by row, neighbours joined, counted from the first module inside the quiet zone.</summary>
    internal IEnumerable<(int Column, int Row, int Length)> Runs()
    {
        for (var row = 0; row < _modules.Height; row++)
        {
            for (var column = 0; column < _modules.Width; column++)
            {
                var start = column;
                while (column < _modules.Width && _modules[column, row])
                    column++;
                if (column > start)
                    yield return (start, row, column - start);
            }
        }
    }

    private static CodeMatrix Encode(string text, Func<BitMatrix> write, int quietZone)
    {
        ArgumentException.ThrowIfNullOrEmpty(text);
        try
        {
            return new CodeMatrix(text, write(), quietZone);
        }
        catch (Exception failure)
            when (failure is WriterException or InvalidOperationException or ArgumentException or IndexOutOfRangeException)
        {
            throw new ArgumentException($"This text cannot be written as a code: {failure.Message}", nameof(text), failure);
        }
    }
}
