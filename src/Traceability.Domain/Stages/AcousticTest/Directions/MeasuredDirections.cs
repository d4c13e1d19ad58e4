using System.Globalization;
using Traceability.Domain.Evidence;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.AcousticTest.Findings;
using Traceability.Domain.Stages.AcousticTest.Response;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.AcousticTest.Directions;

/// <summary>
/// What the responses of a capsule say about direction: front against rear and side, how well front and rear match, and the directivity
/// index from measured angles.
/// </summary>
internal static class MeasuredDirections
{
    private const string FrontToBack = "frontToBackDb";
    private const string MatchAt1Khz = "frontRearAt1kHzDb";
    private const string SideToFront = "sideToFrontDb";
    private const string MatchMean = "frontRearMeanDb";
    private const string MatchShape = "frontRearShapeDb";
    private const string MatchGreatest = "frontRearGreatestDb";
    private const string Index = "directivityIndexDb";
    private const string AnglePrefix = "angle-";
    private const string MatchFrom = "matchFromHz",
        MatchTo = "matchToHz",
        At = "directivityHz";

    /// <summary>The route's numbers that it reads.</summary>
    public static readonly IReadOnlyList<MethodParameter> Parameters =
    [
        new(MatchFrom, "Hz", "Front and rear are compared from this frequency on; 100 when not stated."),
        new(MatchTo, "Hz", "They are compared up to this frequency; 10 000 when not stated."),
        new(At, "Hz", "The directivity index is that of this frequency; 1000 when not stated."),
    ];

    /// <summary>What it computes.</summary>
    public static readonly IReadOnlyList<MethodValue> Values =
    [
        new(FrontToBack, "dB"),
        new(MatchAt1Khz, "dB"),
        new(SideToFront, "dB"),
        new(MatchMean, "dB"),
        new(MatchShape, "dB"),
        new(MatchGreatest, "dB"),
        new(Index, "dB"),
    ];
    private const double MatchFromHz = 100;
    private const double MatchToHz = 10_000;

    public static string? HowComputed(string characteristic) =>
        characteristic switch
        {
            FrontToBack =>
                "L(front) - L(rear) at 1 kHz, dB, of the files 'front' and 'rear', the rear measured with the sound from behind; same"
                    + " source and place. Directional characteristics of IEC 60268-4, from memory.",
            MatchAt1Khz =>
                "L(front) - L(rear) at 1 kHz, dB, of the files 'front' and 'rear', each side measured on its own axis: how well the two"
                    + " sides match there. The workshop's own measure of a match.",
            SideToFront =>
                "L(side) - L(front) at 1 kHz, dB, of the files 'side' and 'front'; same source and place. Directional characteristics"
                    + " of IEC 60268-4, from memory.",
            MatchMean => "Mean of L(front) - L(rear), dB, over the points of 'front' from 100 Hz to 10 kHz (route numbers matchFromHz,"
                + " matchToHz): a difference of gain. The workshop's own measure of a match.",
            MatchShape =>
                "Root mean square of L(front) - L(rear) with its mean taken off, dB, over the same points: what no gain can even out."
                    + " The workshop's own measure of a match.",
            MatchGreatest =>
                "Greatest |L(front) - L(rear)|, dB, over the same points, mean included. The workshop's own measure of a match.",
            Index => "L(0) - 10 lg sum w_i 10^(L_i/10), dB, at 1 kHz (route number directivityHz), w_i = (cos(lower edge) - cos(upper"
                + " edge))/2 the share of the sphere of each angle; files 'angle-000' to 'angle-180' ('front' stands for 0). For a"
                + " pattern symmetrical about its axis. Zonal integration (Beranek, Acoustics, from memory).",
            _ => null,
        };

    /// <summary>
    /// True where the file 'rear' is the other side of a dual capsule on its own axis, and not the sound from behind: the stage asks how
    /// the two match.
    /// </summary>
    public static bool RearIsOnItsOwnAxis(Stage stage) =>
        stage.Characteristics.Any(c => c.Name is MatchAt1Khz or MatchMean or MatchShape or MatchGreatest);

    public static IEnumerable<string> ProblemsWith(Stage stage) =>
        RearIsOnItsOwnAxis(stage) && stage.Characteristic(FrontToBack) is { Entered: false }
            ? [AcousticTexts.SideOnItsOwnAxisIsNoBack(FrontToBack, MatchAt1Khz)]
            : [];

    public static AcousticPart Of(StageInput input)
    {
        if (input.Stage.Characteristics.All(c => HowComputed(c.Name) is null))
        {
            return AcousticPart.Nothing;
        }

        var curves = new Dictionary<string, (ResponseCurve Curve, Guid Id)>();
        foreach (var file in input.Evidence.Where(e => e.Kind == EvidenceKind.FrequencyResponse.Code()))
        {
            var (curve, problem) = AcousticCurves.Read(input.Stage, file);
            if (curve is null)
            {
                return AcousticPart.Refused(AcousticTexts.ResponseCannotBeRead(file.Name, problem));
            }

            curves[file.Name] = (curve, file.Id);
        }

        var values = new List<ComputedValue?>();
        if (curves.TryGetValue("front", out var front))
        {
            values.AddRange(Against(input, front, curves));
        }

        var (index, note) = IndexOf(input, curves);
        values.Add(index);
        return new(values, note is null ? [] : [new(note, false)]);
    }

    private static IEnumerable<ComputedValue?> Against(
        StageInput input,
        (ResponseCurve Curve, Guid Id) front,
        Dictionary<string, (ResponseCurve Curve, Guid Id)> curves
    )
    {
        if (curves.TryGetValue("side", out var side))
        {
            yield return ComputedValue.Of(
                SideToFront,
                -Directivity.FrontToBackDb(front.Curve, side.Curve, AcousticCurves.ReferenceHz),
                2,
                front.Id
            );
        }

        if (curves.TryGetValue("rear", out var rear))
        {
            var (from, to) = (
                (double)(input.Number(MatchFrom) ?? (decimal)MatchFromHz),
                (double)(input.Number(MatchTo) ?? (decimal)MatchToHz)
            );
            var match = CurveMatch.Of(front.Curve, rear.Curve, from, to);
            var at1Khz = Directivity.FrontToBackDb(front.Curve, rear.Curve, AcousticCurves.ReferenceHz);
            yield return ComputedValue.Of(FrontToBack, at1Khz, 2, front.Id);
            yield return ComputedValue.Of(MatchAt1Khz, at1Khz, 2, front.Id);
            yield return ComputedValue.Of(MatchMean, match?.MeanDb, 2, front.Id);
            yield return ComputedValue.Of(MatchShape, match?.ShapeRmsDb, 2, front.Id);
            yield return ComputedValue.Of(MatchGreatest, match?.GreatestDb, 2, front.Id);
        }
    }

    private static (ComputedValue? Index, string? Note) IndexOf(StageInput input, Dictionary<string, (ResponseCurve Curve, Guid Id)> curves)
    {
        var hz = (double)(input.Number(At) ?? (decimal)AcousticCurves.ReferenceHz);
        var measured = curves
            .Where(c => c.Key.StartsWith(AnglePrefix, StringComparison.Ordinal))
            .Select(c =>
                (
                    Degrees: int.TryParse(c.Key[AnglePrefix.Length..], NumberStyles.None, CultureInfo.InvariantCulture, out var d) ? d : -1,
                    c.Value.Curve,
                    c.Key
                )
            )
            .ToList();
        if (measured.Count == 0 || input.Stage.Characteristic(Index) is null)
        {
            return (null, null);
        }

        if (measured.All(m => m.Degrees != 0) && curves.TryGetValue("front", out var front))
        {
            measured.Add((0, front.Curve, "front"));
        }

        var polar = measured.OrderBy(m => m.Degrees).ToList();
        if (polar.FirstOrDefault(m => m.Degrees is < 0 or > 180) is { Key: { } odd })
        {
            return (null, AcousticTexts.NoIndexForAFileWithoutAngle(odd));
        }

        if (polar.Count < 3 || polar[0].Degrees != 0 || polar[^1].Degrees != 180)
        {
            return (null, AcousticTexts.NoIndexForTooFewAngles(string.Join(", ", polar.Select(m => m.Degrees))));
        }

        return polar.FirstOrDefault(m => m.Curve.LevelAt(hz) is null) is { Key: { } silent }
            ? (null, AcousticTexts.NoIndexForASilentFile(silent, hz))
            : (
                ComputedValue.Of(
                    Index,
                    Directivity.IndexDb([.. polar.Select(m => new PolarPoint(m.Degrees, m.Curve.LevelAt(hz)!.Value))]),
                    2
                ),
                null
            );
    }
}
