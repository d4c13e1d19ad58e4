using Traceability.Domain.Evidence;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.AcousticTest.Directions;
using Traceability.Domain.Stages.AcousticTest.Findings;
using Traceability.Domain.Stages.AcousticTest.Noise;
using Traceability.Domain.Stages.AcousticTest.Response;
using Traceability.Domain.Stages.AcousticTest.Sensitivities;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.AcousticTest;

/// <summary>
/// The acoustic test: responses against the route's mask, and whatever else the stage has characteristics for: sensitivity by comparison,
/// directions, noise and crackles, stored calibration values, the air. For every masked file gives <c>{name}MarginDb</c>, the smallest
/// distance to the mask (negative outside it).
/// </summary>
/// <remarks>
/// Curves are smoothed as the route says and judged by <see cref="ResponseAgainstMask"/>, around the model's reference curve where the
/// route has one. The other values: <see cref="MeasuredSensitivity"/>, <see cref="MeasuredDirections"/>, <see cref="MeasuredNoise"/>,
/// <see cref="MeasuredAir"/>. A required value that cannot be computed leaves the stage without verdict; one that may be left open is left
/// open, and a finding says why. Checks: published values E1 to E12, <c>AcousticMethodTests</c>, <c>NoiseMethodTests</c>.
/// </remarks>
public sealed class ResponseInMask : StageMethod
{
    private const string Margin = "MarginDb";

    /// <inheritdoc/>
    public override string Name => "response-in-mask";

    /// <inheritdoc/>
    public override int Version => 4;

    /// <inheritdoc/>
    public override MethodDescription Description { get; } =
        new(
            "The acoustic test: responses against a mask, and whatever else the stage has characteristics for: sensitivity by"
                + " comparison with the"
                + " reference microphone, directions, noise and crackles, stored calibration values, the air. Names say which file and"
                + " which"
                + " pattern they are of.",
            [.. MeasuredSensitivity.Reads, .. MeasuredNoise.Reads, .. MeasuredAir.Reads],
            0,
            [
                new($"{{file}}{Margin}", "dB") { Required = true },
                .. MeasuredSensitivity.Values,
                .. MeasuredDirections.Values,
                .. MeasuredNoise.Values,
                .. MeasuredAir.Values,
            ],
            [EvidenceKind.FrequencyResponse, EvidenceKind.NoiseSpectrum, EvidenceKind.NoiseRecording],
            [
                "Comparison in the free field: IEC 61094-8; level re 1 V/Pa, noise and directions: IEC 60268-4; from memory.",
                "A-weighting: analytic formula of IEC 61672-1.",
                "Speed of sound: Cramer, J. Acoust. Soc. Am. 93 (1993) 2510, from memory.",
                "Directivity index: zonal integration (Beranek, Acoustics, from memory).",
                "Mask, match of front and rear, crackles: the workshop's own definitions.",
            ]
        );

    /// <inheritdoc/>
    public override IReadOnlyList<MethodParameter> Parameters { get; } =
    [
        new("mask", null, "Corners of the tolerance mask by rising frequency (Hz): lower and upper level (dB) relative to 1 kHz.")
        {
            Required = true,
        },
        new(
            "referenceCurve",
            null,
            "The model's curve that the mask lies around: frequency (Hz) and level (dB); a flat line when not stated."
        ),
        new("maskedEvidence", null, "Names of the response files that the mask judges; every response of the stage when not stated."),
        new(
            AcousticCurves.Smoothing,
            "",
            "Curves are smoothed over the b-th part of an octave: a whole number b; not smoothed when not stated."
        )
        {
            Lower = 1,
            Upper = 96,
        },
        .. MeasuredSensitivity.Parameters,
        .. MeasuredDirections.Parameters,
        .. MeasuredNoise.Parameters,
        .. MeasuredAir.Parameters,
    ];

    /// <inheritdoc/>
    public override bool ReadsCalibrations => true;

    /// <inheritdoc/>
    public override string? HowComputed(string characteristic) =>
        characteristic.EndsWith(Margin, StringComparison.Ordinal)
            ? "min(upper limit - D, D - lower limit), dB, over the measured points and the corners of the mask: D(f) = [L(f) - L(1"
                + " kHz)] - [R(f) - R(1 kHz)], L the measured level, smoothed where the route says so (smoothingPerOctave), R the"
                + " reference curve of the model (flat when none is given); limits straight over log f, nothing asked outside the mask."
                + " Negative is outside. The workshop's own definition; reference at 1 kHz as in IEC 60268-4, from memory."
            : MeasuredSensitivity.HowComputed(characteristic)
                ?? MeasuredDirections.HowComputed(characteristic)
                ?? MeasuredNoise.HowComputed(characteristic)
                ?? MeasuredAir.HowComputed(characteristic);

    /// <inheritdoc/>
    public override IEnumerable<string> ProblemsWith(Stage stage)
    {
        if (stage.Parameters.Mask is not { } corners)
        {
            return [AcousticTexts.ResponseNeedsParametersMask];
        }

        var mask = ToleranceMask.ProblemWith(PointsOf(corners));
        var masked = MaskedNames(stage).ToList();
        var unknown = masked.Where(n => stage.Evidence.All(e => e.Name != n || e.Kind != EvidenceKind.FrequencyResponse.Code()));
        var reference = stage.Parameters.ReferenceCurve is { } curve
            ? ResponseCurve.ProblemWith([.. curve.Select(p => new ResponsePoint((double)p.FrequencyHz, (double)p.LevelDb))])
            : null;
        return
        [
            .. mask is null ? [] : new[] { mask },
            .. reference is null ? [] : new[] { AcousticTexts.ProblemOfTheReferenceCurve(reference) },
            .. masked.Count == 0 ? [AcousticTexts.ResponseNeedsItsFile] : Array.Empty<string>(),
            .. unknown.Select(n => AcousticTexts.MaskedEvidenceIsNoResponse(n)),
            .. stage.Parameters.Numbers.TryGetValue(AcousticCurves.Smoothing, out var perOctave)
            && (perOctave is < 1 or > 96 || perOctave != Math.Floor(perOctave))
                ? [AcousticTexts.SmoothingIsTheBOfAnOctave(AcousticCurves.Smoothing)]
                : Array.Empty<string>(),
            .. NeedsComputed(stage, masked.Select(MarginOf)),
            .. MeasuredSensitivity.ProblemsWith(stage),
            .. MeasuredDirections.ProblemsWith(stage),
            .. MeasuredNoise.ProblemsWith(stage),
            .. ComputesNoOther(stage),
        ];
    }

    /// <inheritdoc/>
    protected override StageOutcome Compute(StageInput input)
    {
        var sensitivity = MeasuredSensitivity.Of(input);
        AcousticPart[] parts =
        [
            .. MaskedNames(input.Stage).Select(n => AgainstMask(input, n)),
            sensitivity,
            MeasuredDirections.Of(input),
            MeasuredAir.Of(input),
            MeasuredAir.AtDistance(input),
            .. MeasuredNoise.Of(input, MeasuredSensitivity.VPerPaByPattern(input, sensitivity.Values)),
        ];
        if (parts.FirstOrDefault(p => p.Refusal is not null) is { } refused)
        {
            return StageOutcome.CannotJudge(refused.Refusal!);
        }

        var values = Wanted(input.Stage, parts.SelectMany(p => p.Values));
        var findings = parts.SelectMany(p => p.Findings).ToList();
        var missing = input
            .Stage.Characteristics.Where(c =>
                c is { Entered: false, Required: true } && values.All(v => v.Characteristic != c.Name) && !LeftOpen(input, c.Name)
            )
            .Select(c => c.Label)
            .ToList();
        return missing.Count == 0
            ? new(values, findings)
            : StageOutcome.CannotJudge(
                AcousticTexts
                    .WhatItIsComputedFromIsMissing(
                        string.Join(", ", missing),
                        string.Join(
                            " ",
                            findings
                                .Select(f => f.Text)
                                .Where(t => t.StartsWith("no", StringComparison.Ordinal))
                                .Select(t => $"{char.ToUpperInvariant(t[0])}{t[1..]}.")
                        )
                    )
                    .TrimEnd()
            );
    }

    private static AcousticPart AgainstMask(StageInput input, string name)
    {
        if (input.File(name) is not { } file)
        {
            return AcousticPart.Nothing;
        }

        var (curve, problem) = AcousticCurves.Read(input.Stage, file);
        var judgement = curve is null
            ? null
            : ResponseAgainstMask.Judge(curve, new(PointsOf(input.Stage.Parameters.Mask!)), AcousticCurves.ReferenceOf(input.Stage));
        return judgement is { WorstMarginDb: { } margin, Verdict: not MaskVerdict.NotShown }
            ? new(
                [ComputedValue.Of(MarginOf(name), margin, 2, file.Id)],
                [new($"{name}: {judgement.Words}", judgement.Verdict == MaskVerdict.Outside)]
            )
            : AcousticPart.Refused(AcousticTexts.ResponseCannotBeJudged(name, problem ?? judgement?.Words));
    }

    /// <summary>The margin of a response that the route does not insist on.</summary>
    private static bool LeftOpen(StageInput input, string characteristic) =>
        input.Stage.Evidence.Any(e => !e.Required && MarginOf(e.Name) == characteristic && input.File(e.Name) is null);

    private static IEnumerable<string> MaskedNames(Stage stage) =>
        stage.Parameters.MaskedEvidence ?? stage.Evidence.Where(e => e.Kind == EvidenceKind.FrequencyResponse.Code()).Select(e => e.Name);

    private static string MarginOf(string name) => $"{name}{Margin}";

    private static MaskPoint[] PointsOf(IReadOnlyList<MaskCorner> corners) =>
        [.. corners.Select(c => new MaskPoint((double)c.FrequencyHz, (double)c.LowerDb, (double)c.UpperDb))];
}
