using System.Globalization;

namespace Traceability.Domain.Stages.AcousticTest;

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
        ResponseCurve response, ToleranceMask mask, ResponseCurve? reference = null, double normalisedAtHz = 1000)
    {
        ArgumentNullException.ThrowIfNull(response);
        ArgumentNullException.ThrowIfNull(mask);
        Require.Positive(normalisedAtHz);
        if (response.LevelAt(normalisedAtHz) is not { } zeroDb)
            return NotShown($"the response has nothing at {normalisedAtHz:0.##} Hz, where it is normalised");
        var referenceZeroDb = 0.0;
        if (reference is not null)
        {
            if (reference.LevelAt(normalisedAtHz) is not { } level)
                return NotShown($"the reference curve has nothing at {normalisedAtHz:0.##} Hz, where it is normalised");
            referenceZeroDb = level;
        }

        (double MarginDb, double Hz, double DeviationDb)? worst = null;
        double? firstOutsideHz = null;
        foreach (var frequencyHz in PlacesToLook(response, mask, reference))
        {
            if (mask.At(frequencyHz) is not { } band || response.LevelAt(frequencyHz) is not { } level) continue;
            var wantedDb = 0.0;
            if (reference is not null)
            {
                if (reference.LevelAt(frequencyHz) is not { } wanted) continue;
                wantedDb = wanted - referenceZeroDb;
            }
            var deviationDb = level - zeroDb - wantedDb;
            var marginDb = Math.Min((band.UpperDb ?? double.PositiveInfinity) - deviationDb, deviationDb - (band.LowerDb ?? double.NegativeInfinity));
            if (double.IsPositiveInfinity(marginDb)) continue;
            if (marginDb < -RoundingDb) firstOutsideHz ??= frequencyHz;
            if (worst is null || marginDb < worst.Value.MarginDb) worst = (marginDb, frequencyHz, deviationDb);
        }
        return Conclude(worst, firstOutsideHz, Missing(response, mask, reference), mask);
    }

    private static ResponseJudgement Conclude(
        (double MarginDb, double Hz, double DeviationDb)? worst, double? firstOutsideHz, string? missing, ToleranceMask mask)
    {
        if (worst is not { } w) return NotShown($"{missing ?? "the mask asks for nothing where the response has points"}");
        if (firstOutsideHz is { } first)
            return new(MaskVerdict.Outside, w.MarginDb, w.Hz, first, Say($"outside the mask from {first:0.#} Hz; ")
                + Say($"worst at {w.Hz:0.#} Hz: {w.DeviationDb:+0.00;-0.00;0.00} dB where {Allowed(mask.At(w.Hz)!.Value)}"));
        if (missing is not null) return new(MaskVerdict.NotShown, w.MarginDb, w.Hz, null, missing);
        return new(MaskVerdict.Inside, w.MarginDb, w.Hz, null, Say($"inside the mask; closest at {w.Hz:0.#} Hz with {w.MarginDb:0.00} dB to spare"));
    }

    private static string Allowed(MaskBand band) => band switch
    {
        { LowerDb: { } low, UpperDb: { } high } => Say($"{low:+0.00;-0.00;0.00} to {high:+0.00;-0.00;0.00} dB is allowed"),
        { LowerDb: { } low } => Say($"{low:+0.00;-0.00;0.00} dB or more is allowed"),
        _ => Say($"{band.UpperDb:+0.00;-0.00;0.00} dB or less is allowed"),
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
        return MissingIn(response, "the response") ?? (reference is null ? null : MissingIn(reference, "the reference curve"));

        string? MissingIn(ResponseCurve curve, string name) =>
            curve.LowestHz > mask.LowestHz * (1 + EndsMayMissBy)
                ? Say($"the mask asks from {mask.LowestHz:0.#} Hz on, {name} begins at {curve.LowestHz:0.#} Hz")
                : curve.HighestHz < mask.HighestHz * (1 - EndsMayMissBy)
                    ? Say($"the mask asks up to {mask.HighestHz:0.#} Hz, {name} ends at {curve.HighestHz:0.#} Hz")
                    : null;
    }

    private static ResponseJudgement NotShown(FormattableString because) => new(MaskVerdict.NotShown, null, null, null, Say(because));

    private static string Say(FormattableString sentence) => sentence.ToString(CultureInfo.InvariantCulture);
}
