namespace Traceability.Domain.Evidence;

/// <summary>The noise in one one-third-octave band.</summary>
/// <param name="Band">The band's index x: its exact mid-frequency is 1000 * 10^(x/10) Hz (IEC 61260-1, base ten, from memory); 0 is 1
/// kHz.</param>
/// <param name="FrequencyHz">The mid-frequency as the file gives it, usually nominal, Hz.</param>
/// <param name="LevelDbv">The level in the band, dB re 1 V.</param>
public readonly record struct NoiseBand(int Band, double FrequencyHz, double LevelDbv)
{
    /// <summary>The band's exact mid-frequency, Hz.</summary>
    public double ExactFrequencyHz => 1000 * Math.Pow(10, Band / 10.0);
}

/// <summary>A noise spectrum: neighbouring one-third-octave bands, none left out.</summary>
public sealed record NoiseSpectrum(IReadOnlyList<NoiseBand> Bands);
