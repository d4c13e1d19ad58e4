using System.Buffers.Binary;
using PdfSharp.Drawing;

namespace Traceability.Documents.Logos;

/// <summary>
/// A workshop's logo: a PNG, or an SVG of plain shapes. Whatever could run, fetch or refer to anything is refused, because the file is
/// shown in browsers and stands on documents for good.
/// </summary>
public static class LogoFile
{
    public const int MostBytes = 1_000_000,
        MostPixels = 4000;

    public const string Png = "image/png",
        Svg = "image/svg+xml";

    private static ReadOnlySpan<byte> PngSignature => [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>True when the bytes begin like a PNG.</summary>
    public static bool IsPng(ReadOnlySpan<byte> bytes) => bytes.StartsWith(PngSignature);

    /// <summary>What kind of file it is by its content; null with the problem when it cannot be a logo.</summary>
    public static (string? Type, LogoProblem? Problem) Check(byte[] bytes)
    {
        try
        {
            if (IsPng(bytes))
            {
                CheckPng(bytes);
                return (Png, null);
            }

            SvgPicture.Read(bytes);
            return (Svg, null);
        }
        catch (LogoException refused)
        {
            return (null, refused.Problem);
        }
    }

    /// The size is read before anything is unpacked: a small file may hold a large picture.
    private static void CheckPng(byte[] bytes)
    {
        if (bytes.Length < 33)
            throw new LogoException(LogoFault.NotAPicture);
        var (width, height) = (
            BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(16)),
            BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(20))
        );
        if (width is 0 || height is 0)
            throw new LogoException(LogoFault.Empty);
        if (width > MostPixels || height > MostPixels)
            throw new LogoException(LogoFault.TooManyPixels, $"{width} × {height}");
        try
        {
            using var stream = new MemoryStream(bytes, 0, bytes.Length, writable: false, publiclyVisible: true);
            using var image = XImage.FromStream(stream);
            if (image.PixelWidth != width || image.PixelHeight != height)
                throw new LogoException(LogoFault.NotAPicture);
        }
        catch (Exception broken) when (broken is not LogoException)
        {
            // The library that reads it throws whatever it happens to meet.
            throw new LogoException(LogoFault.NotAPicture);
        }
    }
}
