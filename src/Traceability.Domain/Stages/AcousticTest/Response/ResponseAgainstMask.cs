using Traceability.Domain.Stages.AcousticTest.Findings;
using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Response;

/// <summary>
/// Judges a measured response against a mask around the reference curve of the model.
/// </summary>
/// <remarks>
/// <para>
/// Deviation: D(f) = [L(f) - L(f0)] - [R(f) - R(f0)], L the measured level, R the reference curve (flat when none is given), f0 the
/// frequency of normalisation. D is compared with the mask at every measured point and, so that a coarse curve cannot step over a corner,
/// at every corner of the mask and of the reference curve, the measured curve being straight over log f between its points.
/// </para>
/// <para>
/// Where the mask asks and the curve has nothing, there is no verdict, unless what is there is outside already. Ends may miss each other
/// by 1 %: nominal and exact band frequencies (ISO 266, IEC 61260-1) differ by as much. Limits themselves are inside.
/// Checks: <c>ResponseAgainstMaskTests</c>.
/// </para>
/// </remarks>
public static class ResponseAgainstMask
{
    private const double EndsMayMissBy = 0.01;
    private const double RoundingDb = 1e-9;

    /// <summary>Judges a response.</summary>
    /// <param name="response">The measured curve.</param>
    /// <param name="mask">The mask.</param>
    /// <param name="reference">The reference curve of the model; null for a mask around a flat line.</param>
    /// <param name="normalisedAtHz">Frequency at which both curves are put to 0 dB, Hz.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency of normalisation is zero, negative or NaN.</exception>
    public static ResponseJudgement Judge(
        ResponseCurve response,
        ToleranceMask mask,
        ResponseCurve? reference = null,
        double normalisedAtHz = 1000
    )
    {
        ArgumentNullException.ThrowIfNull(response);
        ArgumentNullException.ThrowIfNull(mask);
        Require.Positive(normalisedAtHz);
        if (response.LevelAt(normalisedAtHz) is not { } zeroDb)
            return NotShown(AcousticTexts.ResponseHasNothingAtHz(normalisedAtHz));
        var referenceZeroDb = 0.0;
        if (reference is not null)
        {
            if (reference.LevelAt(normalisedAtHz) is not { } level)
                return NotShown(AcousticTexts.ReferenceCurveHasNothingAtHz(normalisedAtHz));
            referenceZeroDb = level;
        }

        (double MarginDb, double Hz, double DeviationDb)? worst = null;
        double? firstOutsideHz = null;
        foreach (var frequencyHz in PlacesToLook(response, mask, reference))
        {
            if (mask.At(frequencyHz) is not { } band || response.LevelAt(frequencyHz) is not { } level)
                continue;
            var wantedDb = 0.0;
            if (reference is not null)
            {
                if (reference.LevelAt(frequencyHz) is not { } wanted)
                    continue;
                wantedDb = wanted - referenceZeroDb;
            }
            var deviationDb = level - zeroDb - wantedDb;
            var marginDb = Math.Min(
                (band.UpperDb ?? double.PositiveInfinity) - deviationDb,
                deviationDb - (band.LowerDb ?? double.NegativeInfinity)
            );
            if (double.IsPositiveInfinity(marginDb))
                continue;
            if (marginDb < -RoundingDb)
                firstOutsideHz ??= frequencyHz;
            if (worst is null || marginDb < worst.Value.MarginDb)
                worst = (marginDb, frequencyHz, deviationDb);
        }
        return Conclude(worst, firstOutsideHz, Missing(response, mask, reference), mask);
    }

    private static ResponseJudgement Conclude(
        (double MarginDb, double Hz, double DeviationDb)? worst,
        double? firstOutsideHz,
        string? missing,
        ToleranceMask mask
    )
    {
        if (worst is not { } w)
            return NotShown(missing ?? AcousticTexts.MaskAsksForNothing);
        if (firstOutsideHz is { } first)
            return new(
                MaskVerdict.Outside,
                w.MarginDb,
                w.Hz,
                first,
                AcousticTexts.OutsideTheMask(first, w.Hz, w.DeviationDb, Allowed(mask.At(w.Hz)!.Value))
            );
        if (missing is not null)
            return new(MaskVerdict.NotShown, w.MarginDb, w.Hz, null, missing);
        return new(MaskVerdict.Inside, w.MarginDb, w.Hz, null, AcousticTexts.InsideTheMask(w.Hz, w.MarginDb));
    }

    private static string Allowed(MaskLimits band) =>
        band switch
        {
            { LowerDb: { } low, UpperDb: { } high } => AcousticTexts.FromToIsAllowed(low, high),
            { LowerDb: { } low } => AcousticTexts.OrMoreIsAllowed(low),
            _ => AcousticTexts.OrLessIsAllowed(band.UpperDb),
        };

    private static double[] PlacesToLook(ResponseCurve response, ToleranceMask mask, ResponseCurve? reference)
    {
        double[] places =
        [
            .. response.Points.Select(p => p.FrequencyHz),
            .. mask.Points.Select(p => p.FrequencyHz),
            .. reference?.Points.Select(p => p.FrequencyHz) ?? [],
        ];
        Array.Sort(places);
        return places;
    }

    private static string? Missing(ResponseCurve response, ToleranceMask mask, ResponseCurve? reference)
    {
        return MissingIn(response, AcousticTexts.TheResponse)
            ?? (reference is null ? null : MissingIn(reference, AcousticTexts.TheReferenceCurve));

        string? MissingIn(ResponseCurve curve, string name) =>
            curve.LowestHz > mask.LowestHz * (1 + EndsMayMissBy) ? AcousticTexts.MaskBeginsEarlier(mask.LowestHz, name, curve.LowestHz)
            : curve.HighestHz < mask.HighestHz * (1 - EndsMayMissBy) ? AcousticTexts.MaskEndsLater(mask.HighestHz, name, curve.HighestHz)
            : null;
    }

    private static ResponseJudgement NotShown(string because) => new(MaskVerdict.NotShown, null, null, null, because);
}
