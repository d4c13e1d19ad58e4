using Traceability.Domain.Evidence;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.AcousticTest.Response;

/// <summary>
/// The responses of a stage as they are judged: smoothed over 1/b octave where the route says so (number <c>smoothingPerOctave</c>), and
/// for the mask relative to their own level at 1 kHz and to the reference curve of the model.
/// </summary>
/// <remarks>Smoothing by <see cref="OctaveSmoothing"/>. Checks: <c>AcousticMethodTests</c>.</remarks>
public static class AcousticCurves
{
    /// <summary>Where every curve is put to 0 dB, Hz.</summary>
    public const double ReferenceHz = 1000;

    /// <summary>The route's number that states b of the 1/b octave.</summary>
    public const string Smoothing = "smoothingPerOctave";

    /// <summary>b of the 1/b octave over which the stage smooths; null when it does not.</summary>
    public static int? SmoothingOf(Stage stage) =>
        stage.Parameters.Numbers.TryGetValue(Smoothing, out var perOctave) ? (int)perOctave : null;

    /// <summary>The reference curve of the model that the mask lies around; null for a flat one.</summary>
    public static ResponseCurve? ReferenceOf(Stage stage) =>
        stage.Parameters.ReferenceCurve is { } points
            ? new([.. points.Select(p => new ResponsePoint((double)p.FrequencyHz, (double)p.LevelDb))])
            : null;

    /// <summary>A measured response, smoothed as the stage asks; its level stays absolute.</summary>
    public static ResponseCurve Of(Stage stage, FrequencyResponse response)
    {
        var curve = new ResponseCurve([.. response.Points.Select(p => new ResponsePoint(p.FrequencyHz, p.LevelDb))]);
        return SmoothingOf(stage) is { } perOctave ? OctaveSmoothing.Smooth(curve, perOctave) : curve;
    }

    /// <summary>
    /// The points that a picture shows: relative to 1 kHz (or to the nearest point, where the curve has none there) of
    /// <paramref name="zero"/>, the curve itself or another of the same part and set-up, and to the reference curve of the model.
    /// </summary>
    public static IReadOnlyList<ResponsePoint> AsJudged(Stage stage, FrequencyResponse response, FrequencyResponse zero)
    {
        var reference = ReferenceOf(stage);
        var zeroDb = LevelNear(Of(stage, zero)) - (reference is null ? 0 : LevelNear(reference));
        return
        [
            .. Of(stage, response)
                .Points.Where(p => reference is null || reference.LevelAt(p.FrequencyHz) is not null)
                .Select(p => p with { LevelDb = Math.Round(p.LevelDb - zeroDb - (reference?.LevelAt(p.FrequencyHz) ?? 0), 3) }),
        ];
    }

    /// <summary>How much higher a response lies than another at 1 kHz, dB, both smoothed as the stage asks.</summary>
    public static double LevelOver(Stage stage, FrequencyResponse response, FrequencyResponse other) =>
        LevelNear(Of(stage, response)) - LevelNear(Of(stage, other));

    /// <summary>A file read as a response, or what is wrong with it.</summary>
    internal static (ResponseCurve? Curve, string? Problem) Read(Stage stage, EvidenceFile file)
    {
        var read = FrequencyResponseFile.Read(file.Bytes);
        return read.IsGood ? (Of(stage, read.Data), null) : (null, string.Join("; ", read.Problems));
    }

    private static double LevelNear(ResponseCurve curve) =>
        curve.LevelAt(ReferenceHz) ?? curve.Points.MinBy(p => Math.Abs(Math.Log(p.FrequencyHz / ReferenceHz))).LevelDb;
}
