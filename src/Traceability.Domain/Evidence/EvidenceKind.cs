namespace Traceability.Domain.Evidence;

/// <summary>The closed list of files that a stage can ask for.</summary>
public enum EvidenceKind
{
    /// <summary>Temperature and humidity over time, from a logger in the cabinet.</summary>
    ClimateLog,

    /// <summary>Level over frequency, from an acoustic measurement.</summary>
    FrequencyResponse,

    /// <summary>Noise level in one-third-octave bands.</summary>
    NoiseSpectrum,

    /// <summary>The noise itself, as recorded.</summary>
    NoiseRecording,

    /// <summary>A picture.</summary>
    Photo,
}

/// <summary>The names of the kinds of evidence, as routes and clients write them, and the content types they travel under.</summary>
public static class EvidenceKinds
{
    /// <summary>All kinds, in the order of the contract.</summary>
    public static IReadOnlyList<EvidenceKind> All { get; } = Enum.GetValues<EvidenceKind>();

    /// <summary>The kind's written name, e.g. <c>climate-log</c>.</summary>
    public static string Code(this EvidenceKind kind) =>
        kind switch
        {
            EvidenceKind.ClimateLog => "climate-log",
            EvidenceKind.FrequencyResponse => "frequency-response",
            EvidenceKind.NoiseSpectrum => "noise-spectrum",
            EvidenceKind.NoiseRecording => "noise-recording",
            EvidenceKind.Photo => "photo",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of evidence."),
        };

    /// <summary>The kind with this written name, or <see langword="null"/>.</summary>
    public static EvidenceKind? FromCode(string? code)
    {
        foreach (var kind in All)
            if (kind.Code() == code)
                return kind;
        return null;
    }

    /// <summary>The content types that a file of this kind may be sent under.</summary>
    public static IReadOnlyList<string> ContentTypes(this EvidenceKind kind) =>
        kind switch
        {
            EvidenceKind.NoiseRecording => ["audio/wav"],
            EvidenceKind.Photo => [Photo.Jpeg, Photo.Png],
            _ => ["text/csv"],
        };
}
