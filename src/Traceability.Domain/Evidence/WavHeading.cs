using System.Buffers.Binary;
using System.Globalization;

namespace Traceability.Domain.Evidence;

/// <summary>What the heading of a WAV file says about its samples.</summary>
internal sealed record WavHeading(int SampleRateHz, int BitsPerSample, bool IsFloatingPoint, int DataStart, int DataLength)
{
    private const ushort Pcm = 1;
    private const ushort FloatingPoint = 3;
    private const ushort Extensible = 0xFFFE;

    public int BytesPerSample => BitsPerSample / 8;

    /// <summary>The smallest step between two samples, in units of full scale.</summary>
    public double Step => IsFloatingPoint ? Math.ScaleB(1, -23) : Math.ScaleB(1, 1 - BitsPerSample);

    /// <summary>The highest sample that can be written without loss, in units of full scale.</summary>
    public double HighestSample => IsFloatingPoint ? 1 : 1 - Step;

    public static WavHeading? Read(ReadOnlySpan<byte> bytes, FindingList findings)
    {
        if (bytes.Length < 12 || !bytes.StartsWith("RIFF"u8) || !bytes[8..].StartsWith("WAVE"u8))
            return Refuse(findings, bytes.IsEmpty ? "The file is empty." : "This is not a WAV file.", bytes.IsEmpty ? FileFault.TooLittle : FileFault.WrongFormat);

        WavHeading? format = null;
        for (long at = 12; at + 8 <= bytes.Length;)
        {
            var chunk = bytes[(int)at..];
            var size = BinaryPrimitives.ReadUInt32LittleEndian(chunk[4..]);
            if (chunk.StartsWith("data"u8)) return format is null ? NoFormat(findings) : WithData(format, bytes.Length, (int)at + 8, size, findings);
            if (chunk.StartsWith("fmt "u8) && (format = Format(chunk[8..], size, findings)) is null) return null;
            at += 8 + (long)size + (size & 1);
        }
        return format is null ? NoFormat(findings) : Refuse(findings, "The file ends before its samples begin.", FileFault.CutOff);
    }

    private static WavHeading? Format(ReadOnlySpan<byte> body, uint size, FindingList findings)
    {
        if (size < 16 || body.Length < size) return Refuse(findings, "The file ends inside its heading.", FileFault.CutOff);
        var tag = BinaryPrimitives.ReadUInt16LittleEndian(body);
        var channels = BinaryPrimitives.ReadUInt16LittleEndian(body[2..]);
        var rate = BinaryPrimitives.ReadUInt32LittleEndian(body[4..]);
        var bits = BinaryPrimitives.ReadUInt16LittleEndian(body[14..]);
        if (tag == Extensible && size >= 40) tag = BinaryPrimitives.ReadUInt16LittleEndian(body[24..]);

        if (!((tag == Pcm && bits is 16 or 24 or 32) || (tag == FloatingPoint && bits == 32)))
            return Refuse(findings, $"Format {tag} with {bits} bits is not read: save as PCM of 16, 24 or 32 bits or floating point of 32.", FileFault.WrongFormat);
        if (channels != 1)
            return Refuse(findings, $"{channels} channels: save the measured channel alone (mono).", FileFault.WrongFormat);
        if (rate is < 8_000 or > 768_000)
            return Refuse(findings, string.Create(CultureInfo.InvariantCulture, $"{rate} samples a second is not between 8000 and 768000."), FileFault.WrongFormat);
        return new((int)rate, bits, tag == FloatingPoint, 0, 0);
    }

    private static WavHeading? WithData(WavHeading format, int fileLength, int start, uint size, FindingList findings)
    {
        // Recorders that stream do not know the length beforehand and leave all bits set.
        var there = fileLength - start;
        if (size != uint.MaxValue && size > there)
            return Refuse(findings, $"The file is cut off: {there} of {size} bytes of samples are there.", FileFault.CutOff);
        var length = size == uint.MaxValue ? there : (int)size;
        return format with { DataStart = start, DataLength = length - length % format.BytesPerSample };
    }

    private static WavHeading? NoFormat(FindingList findings) =>
        Refuse(findings, "The WAV file does not say what format its samples have.", FileFault.WrongFormat);

    private static WavHeading? Refuse(FindingList findings, string message, FileFault fault)
    {
        findings.Add(0, message, fault);
        return null;
    }
}
