using System.Globalization;
using CsCheck;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;
using static Traceability.Domain.Tests.Stages.AcousticTest.MaskedResponse;

namespace Traceability.Domain.Tests.Stages.AcousticTest;

/// <summary>Sensitivity by comparison with the reference microphone, corrected for the air, and against a stored value.</summary>
public class SensitivityMethodTests
{
    /// <summary>
    /// L_x = L_ref + 20 lg(U_x/U_ref): published value E2-001 in mV/Pa, -26 dB re 1 V/Pa with 50.12 and 20 mV gives -33.979621 dB.
    /// </summary>
    [Fact]
    public void Sensitivity_comes_from_the_comparison_with_the_reference_microphone()
    {
        var outcome = Compared(20m, 50.12m, (decimal)(1000 * Math.Pow(10, -26.0 / 20)));

        Assert.Equal(20.00m, outcome.Value("sensitivityFrontMvPa"));
        Assert.Equal(-33.98m, outcome.Value("sensitivityFrontDbvPa"));
    }

    [Theory]
    [InlineData(0, 50)]
    [InlineData(-12, 50)]
    [InlineData(12, 0)]
    public void A_voltage_of_zero_or_the_wrong_sign_gives_no_sensitivity(int output, int reference) =>
        Assert.Contains("a voltage is above zero", Compared(output, reference, 50).Unreadable, StringComparison.Ordinal);

    [Fact]
    public void Without_the_sensitivity_of_the_reference_nothing_is_judged() =>
        Assert.Contains("referenceSensitivityMvPa", Compared(12, 50, null).Unreadable, StringComparison.Ordinal);

    [Fact]
    public void The_calibration_of_the_reference_microphone_counts_before_the_route()
    {
        var stage = Comparing.Numbers(("referenceSensitivityMvPa", 40m)) with
        {
            Constants = new Dictionary<string, decimal> { ["referenceSensitivityMvPa"] = 50 },
        };
        Assert.Equal(
            12m,
            stage
                .Enter("outputFrontMv", 12)
                .Enter("referenceOutputMv", 50)
                .File("front", "frequency-response", Curve(_ => 0))
                .Judge()
                .Value("sensitivityFrontMvPa")
        );
    }

    /// <summary>
    /// E2: L_x = L_ref + 20 lg(U_x/U_ref) + corrections. +0.01 dB/K and -0.02 dB/kPa at 28 °C and 95 kPa: 0.05 + 0.1265 dB.
    /// </summary>
    [Fact]
    public void The_reference_microphone_is_corrected_for_the_air_as_its_calibration_states_and_both_values_are_said()
    {
        var outcome = InAir(28, 950, ("referenceTemperatureDbPerK", 0.01m), ("referencePressureDbPerKpa", -0.02m));

        Assert.Equal(0.177m, outcome.Value("referenceAirCorrectionDb"));
        Assert.Equal((decimal)Math.Round(12 * Math.Pow(10, 0.1765 / 20), 2), outcome.Value("sensitivityFrontMvPa"));
        outcome.Says("12.00 mV/Pa without, 12.25 mV/Pa with the correction of +0.177 dB");
    }

    [Fact]
    public void In_the_reference_air_or_without_coefficients_nothing_is_corrected()
    {
        Assert.Equal(
            12m,
            InAir(23, 1013.25m, ("referenceTemperatureDbPerK", 0.01m), ("referencePressureDbPerKpa", -0.02m)).Value("sensitivityFrontMvPa")
        );
        var without = InAir(28, 950);
        Assert.Equal(12m, without.Value("sensitivityFrontMvPa"));
        Assert.DoesNotContain(without.Computed, c => c.Characteristic == "referenceAirCorrectionDb");
    }

    [Fact]
    public void Coefficients_without_the_air_are_said_and_not_applied()
    {
        var outcome = InAir(null, 950, ("referenceTemperatureDbPerK", 0.01m));
        Assert.Equal(12m, outcome.Value("sensitivityFrontMvPa"));
        outcome.Says("the air was not entered: no correction was applied");
    }

    [Fact]
    public void The_distance_of_the_source_is_said_with_what_the_near_field_does() =>
        Plain
            .Numbers(("distanceMm", 1000))
            .File("front", "frequency-response", Curve(_ => 0))
            .Judge()
            .Says("1 m away; the near field lifts a cardioid by 0.3 dB at 100 Hz");

    private static StageOutcome InAir(decimal? temperatureC, decimal pressureHpa, params (string Name, decimal Value)[] coefficients)
    {
        var stage = Comparing.MayRead("airTemperatureC", "airPressureHpa", "airHumidityPct").MayCompute("referenceAirCorrectionDb") with
        {
            Constants = coefficients.Append(("referenceSensitivityMvPa", 50m)).ToDictionary(c => c.Item1, c => c.Item2),
        };
        Assert.Empty(stage.Problems);
        stage
            .Enter("outputFrontMv", 12)
            .Enter("referenceOutputMv", 50)
            .Enter("airPressureHpa", pressureHpa)
            .Enter("airHumidityPct", 50)
            .File("front", "frequency-response", Curve(_ => 0));
        return (temperatureC is { } t ? stage.Enter("airTemperatureC", t) : stage).Judge();
    }

    [Fact]
    public void Doubling_both_outputs_changes_no_sensitivity() =>
        Gen.Select(Gen.Double[0.1, 100], Gen.Double[0.1, 100])
            .Sample(
                (output, reference) =>
                    Compared((decimal)output, (decimal)reference, 50).Value("sensitivityFrontMvPa")
                    == Compared(2 * (decimal)output, 2 * (decimal)reference, 50).Value("sensitivityFrontMvPa")
            );

    [Theory]
    [InlineData("1.58", 0)]
    [InlineData("0", -1.58)]
    public void A_stored_calibration_value_is_compared_with_the_measured_one(string stored, double error)
    {
        // 20 lg(12/10) = 1.5836 dB.
        var stage = AMethod
            .Named("response-in-mask")
            .Files("frequency-response", "omni")
            .Computes("omniMarginDb", "calibrationErrorOmniDb")
            .Reads("calibrationOmniDb", "outputOmniMv", "referenceOutputMv")
            .Having(new Characteristic("sensitivityOmniMvPa", "S", "mV/Pa", 10, null, null, null, false, false))
            .With(
                Mask with
                {
                    MaskedEvidence = null,
                    Numbers = new Dictionary<string, decimal> { ["referenceSensitivityMvPa"] = 50 },
                }
            );
        Assert.Empty(stage.Problems);
        var outcome = stage
            .Enter("calibrationOmniDb", decimal.Parse(stored, CultureInfo.InvariantCulture))
            .Enter("outputOmniMv", 12)
            .Enter("referenceOutputMv", 50)
            .File("omni", "frequency-response", Curve(_ => 0))
            .Judge();
        Assert.Equal(error, (double)outcome.Value("calibrationErrorOmniDb"), 0.011);
    }

    private static AMethod Comparing =>
        Plain.Reads("outputFrontMv", "referenceOutputMv").Computes("sensitivityFrontMvPa", "sensitivityFrontDbvPa");

    private static StageOutcome Compared(decimal output, decimal reference, decimal? known) =>
        (known is { } s ? Comparing.Numbers(("referenceSensitivityMvPa", s)) : Comparing)
            .Enter("outputFrontMv", output)
            .Enter("referenceOutputMv", reference)
            .File("front", "frequency-response", Curve(_ => 0))
            .Judge();
}
