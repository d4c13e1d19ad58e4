using Traceability.Domain.Stages.AcousticTest.Noise;
using Traceability.Domain.Stages.AcousticTest.Response;
using Traceability.Domain.Stages.AcousticTest.Sensitivities;
using Traceability.Domain.Stages.BoardSet;
using Traceability.Domain.Tests.AgainstPublishedValues.Physics;
using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Physics;

/// <summary>E without patterns (E8, E9) and air (E11, E12).</summary>
internal static class AcousticCases
{
    public static object? Compute(ExpectedValue v) =>
        (v.Formula, v.Name) switch
        {
            ("E1", "level re 1 V/Pa from mV/Pa, dB") => Sensitivity.LevelDbRe1VPerPa(v["S_mV_per_Pa"]),
            ("E1", "mV/Pa from dB re 1 V/Pa") => Sensitivity.MillivoltPerPascal(v["L_dB"]),
            ("E1", "1 Pa in dB SPL re 20 uPa") => Sensitivity.OnePascalDb,
            // The usual "94 dB" is 1 Pa.
            ("E1", _) => new[]
            {
                Sensitivity.LevelDbRe1MvPerPa(v["S_mV_per_Pa"]),
                Sensitivity.OutputDbu(Sensitivity.LevelDbRe1VPerPa(v["S_mV_per_Pa"]), Sensitivity.OnePascalDb),
            },
            ("E2", "combined standard uncertainty rss, dB") => ComparisonCalibration.CombinedUncertainty(v.Numbers("u")),
            ("E2", _) => ComparisonCalibration.LevelDb(v["L_ref"], v["V_ref"], v["V_x"], v["corr_dB"]),
            ("E3", "edges of 1 kHz 1/3-oct band, Hz") => OctaveBand.At(0, 3) is var band ? new[] { band.LowerHz, band.UpperHz } : null,
            ("E3", "exact 1/12-octave x=0, Hz") => OctaveBand.At(0, 12).MidHz,
            ("E3", "octave ratio G") => OctaveBand.Ratio,
            ("E3", _) => OctaveBand.At(v.Whole("x"), 3).MidHz,
            ("E4", "A1000 normalisation, dB") => FrequencyWeighting.ANormalisationDb,
            ("E4", "C-weighting, dB") => FrequencyWeighting.CDb(v["f_Hz"]),
            ("E4", var name) when name.StartsWith("all 34 table values", StringComparison.Ordinal) => WeightingTableTests.AllValuesAreMet(),
            ("E4", _) => FrequencyWeighting.ADb(v["f_exact_Hz"]),
            ("E5", "A-weighted noise voltage, V") => EquivalentNoise.AWeightedV(Bands()),
            ("E5", "equivalent noise level, dB(A)") => EquivalentNoise.LevelDb(EquivalentNoise.AWeightedV(Bands()), v["S_V_per_Pa"]),
            ("E5", "unweighted level, dB") => EquivalentNoise.LevelDb(EquivalentNoise.UnweightedV(Bands()), v["S_V_per_Pa"]),
            ("E5", _) => BackgroundNoise.Subtract(v["L_tot"], v["L_bg"]).LevelDb,
            ("E6", var name) => OctaveSmoothing.LevelAt(Bump(), 1000, name.StartsWith("1/12", StringComparison.Ordinal) ? 12 : 3),
            ("E7", _) => new ToleranceMask([.. v.Rows("mask").Select(row => MaskPoint.Symmetric(row[0], row[1]))])
                .At(v["f_Hz"])!
                .Value.UpperDb,
            ("E10", "mean level difference, dB") => Match(v).MeanDb,
            ("E10", "max abs difference, dB") => Match(v).GreatestDb,
            ("E10", _) => Match(v).ShapeRmsDb,
            ("E13", var name) when name.StartsWith("proximity effect", StringComparison.Ordinal) => NearField.GradientRiseDb(
                v["f"],
                v["r"],
                v["c"]
            ),
            ("E13", _) => NearField.AxialRiseDb(new(v["A"]), v["f"], v["r"], v["c"]),
            ("E14", var name) when name.StartsWith("P48 limits", StringComparison.Ordinal) => new[]
            {
                1000 * PhantomSupply.P48.ShortCircuitA(44),
                1000 * PhantomSupply.P48.ShortCircuitA(52),
            },
            ("E14", var name) when name.StartsWith("max power", StringComparison.Ordinal) => PhantomSupply.P48.GreatestPowerW,
            ("E14", var name) when name.StartsWith("P48", StringComparison.Ordinal) => PhantomSupply.P48.TerminalV(v["I_A"]),
            ("E14", var name) when name.StartsWith("P12", StringComparison.Ordinal) => PhantomSupply.P12.TerminalV(v["I_A"]),
            ("E14", var name) when name.StartsWith("P24", StringComparison.Ordinal) => PhantomSupply.P24.TerminalV(v["I_A"]),
            ("E15", _) => ElectricalNoise.HarmonicDistortion(v.Numbers("V")),
            ("E16", _) => ElectricalNoise.ThermalV(200, 20_000, 296.15),
            _ => null,
        };

    /// <summary>The band spectrum that E5 describes in words.</summary>
    private static BandVoltage[] Bands() =>
        [.. Enumerable.Range(0, 31).Select(i => new BandVoltage(OctaveBand.At(i - 17, 3).MidHz, 0.9e-6 / (1 + 0.15 * i)))];

    /// <summary>The curve that E6 describes in words.</summary>
    private static ResponseCurve Bump() =>
        new([.. Enumerable.Range(-24, 49).Select(k => new ResponsePoint(1000 * Math.Pow(10, 0.3 * k / 24), 0.05 * k + (k == 0 ? 3 : 0)))]);

    private static CurveMatch Match(ExpectedValue v) => CurveMatch.Of(v.Numbers("a"), v.Numbers("b"));
}
