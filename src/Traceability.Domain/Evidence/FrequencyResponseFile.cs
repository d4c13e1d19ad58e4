namespace Traceability.Domain.Evidence;

/// <summary>Reads a <c>frequency-response</c>: CSV with the columns <c>frequency_hz,level_db</c>.</summary>
/// <remarks>
/// Refused: frequencies outside 1 Hz..200 kHz, repeated or out of order; levels outside -300..300 dB; fewer than three points. The limits
/// are common practice, no source; whether the points reach far enough is for the stage to judge. Checked by
/// <c>FrequencyResponseFileTests</c>.
/// </remarks>
public static class FrequencyResponseFile
{
    private const int FewestPoints = 3;

    /// <summary>The response, or what is wrong with the file.</summary>
    public static ParsedFile<FrequencyResponse> Read(ReadOnlyMemory<byte> content)
    {
        var findings = new FindingList();
        var points = SpectrumTable.Read(content, "level_db", FewestPoints, findings);
        return findings.Any ? findings.Refuse<FrequencyResponse>() : findings.Accept(new FrequencyResponse(points));
    }
}
