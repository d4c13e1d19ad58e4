using System.Globalization;
using Traceability.Domain.Evidence;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.AcousticTest.Directions;
using Traceability.Domain.Stages.AcousticTest.Response;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Certificates;

/// <summary>
/// The responses of one stage as pictures, for certificate and page alike. Curves of one microphone in several directions (<c>front</c>,
/// <c>rear</c>, <c>side</c>, <c>angle-030</c> ...) are told apart by their level, so all of them are drawn relative to the front at 1 kHz;
/// a mask that judges one of them by its own level is drawn around that level. Curves of several patterns are each drawn relative to their
/// own level at 1 kHz.
/// </summary>
public static class ResponsesOfStage
{
    private const string Front = "front",
        Rear = "rear",
        AnglePrefix = "angle-",
        OnAxis = "angle-000";
    private static readonly string[] Sides = [Rear, "side"];

    /// <summary>The pictures of a stage's readable responses; none when there is no such file.</summary>
    /// <param name="stage">The stage with its mask.</param>
    /// <param name="serial">The part that was measured.</param>
    /// <param name="files">Its files, the latest under each name.</param>
    /// <param name="measured">When it was measured, in words for the caption; null when that stands elsewhere.</param>
    public static IReadOnlyList<CertifiedCurve> Pictures(
        Stage stage,
        string serial,
        IEnumerable<EvidenceFile> files,
        string? measured = null
    )
    {
        var responses = files
            .Where(f => f.Kind == EvidenceKind.FrequencyResponse.Code())
            .Select(f => (f.Name, Read: FrequencyResponseFile.Read(f.Bytes)))
            .Where(f => f.Read.IsGood)
            .ToDictionary(f => f.Name, f => f.Read.Data!);
        var zero =
            responses.ContainsKey(Front) ? Front
            : responses.ContainsKey(OnAxis) ? OnAxis
            : null;
        var pictures = new Pictured(stage, CertificateTexts.ResponsesOf(serial, stage.Title), responses, measured);
        var directions = zero is null ? [] : responses.Keys.Where(n => n != zero && IsDirection(n)).ToList();
        var alone = responses.Keys.Except(directions).ToLookup(n => IsMasked(stage, n));
        var unmasked = directions.Where(n => !IsMasked(stage, n)).ToList();
        return
        [
            .. alone[true].Any()
                ? [pictures.AgainstMask([.. alone[true]], directions.Count > 0 && alone[true].All(n => n == zero) ? zero : null)]
                : Array.Empty<CertifiedCurve>(),
            .. directions.Where(n => IsMasked(stage, n)).Select(n => pictures.AgainstMask([n], zero)),
            .. unmasked.Count > 0 ? [pictures.ByDirection([zero!, .. unmasked], zero!)] : Array.Empty<CertifiedCurve>(),
            .. alone[false].Any(n => n != zero || unmasked.Count == 0)
                ? [pictures.ForInformation([.. alone[false]])]
                : Array.Empty<CertifiedCurve>(),
        ];
    }

    private static bool IsDirection(string name) =>
        name == Front || Sides.Contains(name) || name.StartsWith(AnglePrefix, StringComparison.Ordinal);

    private static bool IsMasked(Stage stage, string name) =>
        stage.Parameters.Mask is not null && stage.Parameters.MaskedEvidence?.Contains(name) != false;

    /// <summary>What the pictures of one stage have in common.</summary>
    private sealed record Pictured(Stage Stage, string Title, IReadOnlyDictionary<string, FrequencyResponse> Responses, string? Measured)
    {
        public CertifiedCurve AgainstMask(IReadOnlyList<string> names, string? zero)
        {
            var shift = zero is null ? 0 : Math.Round(AcousticCurves.LevelOver(Stage, Responses[names[0]], Responses[zero]), 2);
            var mask = Stage.Parameters.Mask!.Select(c => new CertifiedMaskPoint(
                (double)c.FrequencyHz,
                Math.Round((double)c.LowerDb + shift, 2),
                Math.Round((double)c.UpperDb + shift, 2)
            ));
            return new(
                CertificateTexts.WithItsLimits(Title, string.Join(", ", names.Select(NameOf))),
                Traces(names, zero),
                [.. mask],
                Caption(zero, shift)
            );
        }

        public CertifiedCurve ByDirection(IReadOnlyList<string> names, string zero) =>
            new(CertificateTexts.ByDirection(Title), Traces(names, zero), [], Caption(zero, 0));

        public CertifiedCurve ForInformation(IReadOnlyList<string> names) =>
            new(CertificateTexts.ForInformation(Title), Traces(names, null), [], Caption(null, 0));

        private IReadOnlyList<ResponseTrace> Traces(IReadOnlyList<string> names, string? zero) =>
            [
                .. names.Select(n => new ResponseTrace(
                    NameOf(n),
                    [
                        .. AcousticCurves
                            .AsJudged(Stage, Responses[n], Responses[zero ?? n])
                            .Select(p => new CertifiedPoint(p.FrequencyHz, p.LevelDb)),
                    ]
                )),
            ];

        private string Caption(string? zero, double shift) =>
            string.Join(
                ' ',
                new[]
                {
                    zero is null ? CertificateTexts.ZeroIsItsOwnLevel : CertificateTexts.ZeroIsTheLevelOf(NameOf(zero)),
                    shift == 0 ? null : CertificateTexts.LimitsLieAroundItsOwnLevel(shift.ToString("0.0#", CultureInfo.InvariantCulture)),
                    Stage.Parameters.ReferenceCurve is null ? null : CertificateTexts.ReferenceCurveIsTakenOff,
                    AcousticCurves.SmoothingOf(Stage) is { } perOctave ? CertificateTexts.SmoothedOver(perOctave) : null,
                    Measured is null ? null : CertificateTexts.Measured(Measured),
                }.OfType<string>()
            );

        /// <summary>
        /// A pattern as the labels of its values call it, an angle in degrees, else the file's name in words. The rear of a dual capsule is
        /// its other side on its own axis, and not the sound from behind.
        /// </summary>
        private string NameOf(string name) =>
            (IsDirection(name) ? null : PatternsOfUnit.NameOf(Stage, name))
            ?? (name == Rear && MeasuredDirections.RearIsOnItsOwnAxis(Stage) ? CertificateTexts.RearOnItsOwnAxis : null)
            ?? (
                name.StartsWith(AnglePrefix, StringComparison.Ordinal)
                && int.TryParse(name[AnglePrefix.Length..], NumberStyles.None, CultureInfo.InvariantCulture, out var degrees)
                    ? CertificateTexts.Angle(degrees)
                    : PlainWords.OfCode(name)
            );
    }
}
