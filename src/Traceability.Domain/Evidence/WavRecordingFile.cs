using System.Buffers.Binary;

namespace Traceability.Domain.Evidence;

/// <summary>Reads a <c>noise-recording</c>: WAV, one channel, PCM of 16, 24 or 32 bits or floating point of 32 bits.</summary>
/// <remarks>
/// volts = sample / full scale * volts at full scale, where full scale of n-bit PCM is 2^(n-1). Told apart: another format
/// (<see cref="FileFault.WrongFormat"/>), no samples (<see cref="FileFault.TooLittle"/>), cut off (<see cref="FileFault.CutOff"/>),
/// clipped (three samples in a row at the end of the scale; a floating point sample at or beyond 1 in the same way), and silent (all
/// samples within one step of 16-, 24- or 32-bit PCM, or 2^-23 of floating point). The three in a row are common practice, no source.
/// Layout of RIFF and WAVE_FORMAT_EXTENSIBLE from memory. Checked by <c>WavRecordingFileTests</c>.
/// </remarks>
public static class WavRecordingFile
{
    private const int ClippedRun = 3;

    /// <summary>The recording, or what is wrong with the file.</summary>
    /// <param name="content">The file.</param>
    /// <param name="fullScaleV">Volts (peak) at full scale, above 0 and up to 1000.</param>
    public static ParsedFile<WavRecording> Read(ReadOnlyMemory<byte> content, double fullScaleV)
    {
        var findings = new FindingList();
        if (!(fullScaleV is > 0 and <= 1000))
            return findings.Refuse<WavRecording>(EvidenceTexts.VoltsAtFullScaleAreOutOfRange, FileFault.BadContent);
        if (WavHeading.Read(content.Span, findings) is not { } heading)
            return findings.Refuse<WavRecording>();

        var samples = content.Span.Slice(heading.DataStart, heading.DataLength);
        var volts = new float[samples.Length / heading.BytesPerSample];
        if (volts.Length == 0)
            return findings.Refuse<WavRecording>(EvidenceTexts.RecordingIsEmpty, FileFault.TooLittle);

        var (lowest, highest, runAtEnd, clippedFrom) = (double.MaxValue, double.MinValue, 0, 0);
        for (var i = 0; i < volts.Length; i++)
        {
            var value = Sample(samples[(i * heading.BytesPerSample)..], heading);
            if (!double.IsFinite(value))
                return findings.Refuse<WavRecording>(EvidenceTexts.SampleIsNotANumber(i + 1), FileFault.BadContent);
            (lowest, highest) = (Math.Min(lowest, value), Math.Max(highest, value));
            runAtEnd = value >= heading.HighestSample || value <= -1 ? runAtEnd + 1 : 0;
            if (runAtEnd == ClippedRun && clippedFrom == 0)
                clippedFrom = i + 2 - ClippedRun;
            volts[i] = (float)(value * fullScaleV);
        }
        if (highest - lowest <= heading.Step)
            return findings.Refuse<WavRecording>(EvidenceTexts.RecordingIsSilent, FileFault.Silent);
        if (clippedFrom > 0)
            return findings.Refuse<WavRecording>(
                EvidenceTexts.RecordingIsClipped(clippedFrom, (clippedFrom - 1.0) / heading.SampleRateHz),
                FileFault.Clipped
            );

        var peakV = Math.Max(Math.Abs(lowest), Math.Abs(highest)) * fullScaleV;
        return findings.Accept(new WavRecording(heading.SampleRateHz, heading.BitsPerSample, heading.IsFloatingPoint, volts, peakV));
    }

    // In units of full scale, so -1 is the lowest that PCM can say.
    private static double Sample(ReadOnlySpan<byte> bytes, WavHeading heading) =>
        (heading.BitsPerSample, heading.IsFloatingPoint) switch
        {
            (16, _) => BinaryPrimitives.ReadInt16LittleEndian(bytes) / 32768.0,
            (24, _) => ((bytes[2] << 24 | bytes[1] << 16 | bytes[0] << 8) >> 8) / 8388608.0,
            (_, false) => BinaryPrimitives.ReadInt32LittleEndian(bytes) / 2147483648.0,
            _ => BinaryPrimitives.ReadSingleLittleEndian(bytes),
        };
}
