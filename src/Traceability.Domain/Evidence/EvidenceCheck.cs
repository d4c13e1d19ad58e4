namespace Traceability.Domain.Evidence;

/// <summary>
/// Looks through a file as its kind before it is kept, so that a bad one is refused while the person still has the good one at hand.
/// </summary>
public static class EvidenceCheck
{
    /// <summary>What is wrong with the file; empty when it can be kept.</summary>
    /// <param name="kind">What the file is said to be.</param>
    /// <param name="content">The file.</param>
    /// <param name="fullScaleV">For a recording: the volts at full scale.</param>
    public static IReadOnlyList<FileProblem> Problems(EvidenceKind kind, ReadOnlyMemory<byte> content, double? fullScaleV = null) =>
        kind switch
        {
            EvidenceKind.ClimateLog => ClimateLogFile.Read(content).Problems,
            EvidenceKind.FrequencyResponse => FrequencyResponseFile.Read(content).Problems,
            EvidenceKind.NoiseSpectrum => NoiseSpectrumFile.Read(content).Problems,
            EvidenceKind.NoiseRecording when fullScaleV is null => [new(0, EvidenceTexts.StateTheVoltsAtFullScale)],
            EvidenceKind.NoiseRecording => WavRecordingFile.Read(content, fullScaleV.Value).Problems,
            EvidenceKind.Photo => Photo.Read(content).Problems,
            _ => [new(0, EvidenceTexts.ThereIsNoSuchKindOfEvidence, FileFault.WrongFormat)],
        };
}
