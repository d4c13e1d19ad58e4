using System.Buffers.Binary;

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
            return Refuse(
                findings,
                bytes.IsEmpty ? EvidenceTexts.FileIsEmpty : EvidenceTexts.ThisIsNotAWavFile,
                bytes.IsEmpty ? FileFault.TooLittle : FileFault.WrongFormat
            );

        WavHeading? format = null;
        for (long at = 12; at + 8 <= bytes.Length; )
        {
            var chunk = bytes[(int)at..];
            var size = BinaryPrimitives.ReadUInt32LittleEndian(chunk[4..]);
            if (chunk.StartsWith("data"u8))
                return format is null ? NoFormat(findings) : WithData(format, bytes.Length, (int)at + 8, size, findings);
            if (chunk.StartsWith("fmt "u8) && (format = Format(chunk[8..], size, findings)) is null)
                return null;
            at += 8 + (long)size + (size & 1);
        }
        return format is null ? NoFormat(findings) : Refuse(findings, EvidenceTexts.FileEndsBeforeItsSamplesBegin, FileFault.CutOff);
    }

    private static WavHeading? Format(ReadOnlySpan<byte> body, uint size, FindingList findings)
    {
        if (size < 16 || body.Length < size)
            return Refuse(findings, EvidenceTexts.FileEndsInsideItsHeading, FileFault.CutOff);
        var tag = BinaryPrimitives.ReadUInt16LittleEndian(body);
        var channels = BinaryPrimitives.ReadUInt16LittleEndian(body[2..]);
        var rate = BinaryPrimitives.ReadUInt32LittleEndian(body[4..]);
        var bits = BinaryPrimitives.ReadUInt16LittleEndian(body[14..]);
        if (tag == Extensible && size >= 40)
            tag = BinaryPrimitives.ReadUInt16LittleEndian(body[24..]);

        if (!((tag == Pcm && bits is 16 or 24 or 32) || (tag == FloatingPoint && bits == 32)))
            return Refuse(findings, EvidenceTexts.FormatIsNotRead(tag, bits), FileFault.WrongFormat);
        if (channels != 1)
            return Refuse(findings, EvidenceTexts.SaveTheMeasuredChannelAlone(channels), FileFault.WrongFormat);
        if (rate is < 8_000 or > 768_000)
            return Refuse(findings, EvidenceTexts.RateIsOutOfRange(rate), FileFault.WrongFormat);
        return new((int)rate, bits, tag == FloatingPoint, 0, 0);
    }

    private static WavHeading? WithData(WavHeading format, int fileLength, int start, uint size, FindingList findings)
    {
        // Recorders that stream do not know the length beforehand and leave all bits set.
        var there = fileLength - start;
        if (size != uint.MaxValue && size > there)
            return Refuse(findings, EvidenceTexts.FileIsCutOff(there, size), FileFault.CutOff);
        var length = size == uint.MaxValue ? there : (int)size;
        return format with { DataStart = start, DataLength = length - length % format.BytesPerSample };
    }

    private static WavHeading? NoFormat(FindingList findings) => Refuse(findings, EvidenceTexts.FormatIsNotStated, FileFault.WrongFormat);

    private static WavHeading? Refuse(FindingList findings, string message, FileFault fault)
    {
        findings.Add(0, message, fault);
        return null;
    }
}
