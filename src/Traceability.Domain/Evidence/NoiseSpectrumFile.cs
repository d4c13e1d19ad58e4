namespace Traceability.Domain.Evidence;

/// <summary>Reads a <c>noise-spectrum</c>: CSV with the columns <c>frequency_hz,level_dbv</c>, one line a one-third-octave band.</summary>
/// <remarks>
/// Each frequency must be within 2 % of a band's exact mid-frequency, which takes nominal, base-ten and base-two values alike (the
/// nominal ones differ by 1 % at most, base two by 1.4 %; the next band is 26 % away). A band left out in the middle is refused, because
/// the sum would come out too low. Fewer than ten bands are refused (common practice, no source); which bands a sum needs is for the stage
/// to judge. Mid-frequencies: IEC 61260-1 (from memory). Checked by <c>NoiseSpectrumFileTests</c>.
/// </remarks>
public static class NoiseSpectrumFile
{
    private const int FewestBands = 10;
    private const double MidFrequencyTolerance = 0.02;

    /// <summary>The spectrum, or what is wrong with the file.</summary>
    public static ParsedFile<NoiseSpectrum> Read(ReadOnlyMemory<byte> content)
    {
        var findings = new FindingList();
        var points = SpectrumTable.Read(content, "level_dbv", FewestBands, findings);
        if (findings.Any)
            return findings.Refuse<NoiseSpectrum>();

        var bands = points.ConvertAll(point => new NoiseBand(NearestBand(point.FrequencyHz), point.FrequencyHz, point.LevelDb));
        for (var i = 0; i < bands.Count && !findings.IsFull; i++)
        {
            var band = bands[i];
            if (Math.Abs(band.FrequencyHz / band.ExactFrequencyHz - 1) > MidFrequencyTolerance)
                findings.Add(0, EvidenceTexts.NotAMidFrequency(band.FrequencyHz, band.ExactFrequencyHz));
            else if (i > 0 && band.Band != bands[i - 1].Band + 1)
                findings.Add(0, EvidenceTexts.BandsAreMissingBetween(bands[i - 1].FrequencyHz, band.FrequencyHz));
        }
        return findings.Accept(new NoiseSpectrum(bands));
    }

    private static int NearestBand(double frequencyHz) => (int)Math.Round(10 * Math.Log10(frequencyHz / 1000));
}
