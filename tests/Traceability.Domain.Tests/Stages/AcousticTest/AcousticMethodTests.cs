using System.Globalization;
using System.Text;
using CsCheck;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.AcousticTest.Directions;
using Traceability.Domain.Stages.AcousticTest.Response;
using Traceability.Domain.Stages.Methods;
using Traceability.Domain.Tests.Routes;

namespace Traceability.Domain.Tests.Stages.AcousticTest;

public class AcousticMethodTests
{
    private static readonly StageParameters Mask = new() { MaskedEvidence = ["front"], Mask = [new(100, -3, 3), new(10_000, -3, 3)] };

    [Theory]
    [InlineData(2.9, true)]
    [InlineData(3.0, true)]
    [InlineData(3.1, false)]
    public void A_response_is_judged_below_at_and_above_the_mask(double bumpDb, bool passes)
    {
        var outcome = Plain.File("front", "frequency-response", Curve(f => f == 3000 ? bumpDb : 0)).Judge();

        Assert.Equal(passes, !outcome.Fails());
        Assert.Equal((decimal)Math.Round(3 - bumpDb, 2), outcome.Value("frontMarginDb"));
    }

    [Fact]
    public void The_response_is_judged_relative_to_its_own_level_at_1_kHz() =>
        Assert.Equal(3m, Plain.File("front", "frequency-response", Curve(_ => -38.4)).Judge().Value("frontMarginDb"));

    [Fact]
    public void The_mask_lies_around_the_reference_curve_of_the_model()
    {
        var stage = Plain.With(Mask with { ReferenceCurve = [new(100, -5), new(1000, 0), new(10_000, 5)] });

        Assert.Empty(stage.Problems);
        Assert.Equal(3m, stage.File("front", "frequency-response", Curve(f => 5 * Math.Log10(f / 1000))).Judge().Value("frontMarginDb"));
    }

    [Fact]
    public void Smoothing_takes_the_edge_off_a_narrow_peak()
    {
        var outcome = Plain.Numbers(("smoothingPerOctave", 3)).File("front", "frequency-response", Curve(f => f == 3000 ? 3.5 : 0)).Judge();

        Assert.False(outcome.Fails());
        Assert.True(outcome.Value("frontMarginDb") > 0);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(97)]
    [InlineData(2.5)]
    public void A_smoothing_that_is_none_is_refused_with_the_route(double perOctave) =>
        Assert.Contains(
            Plain.Numbers(("smoothingPerOctave", (decimal)perOctave)).Problems,
            p => p.Contains("1/b octave", StringComparison.Ordinal)
        );

    [Fact]
    public void A_response_that_ends_before_the_mask_gets_no_verdict() =>
        Assert.Contains(
            "ends at",
            Plain.File("front", "frequency-response", "frequency_hz,level_db\n100,0\n1000,0\n5000,0\n").Judge().Unreadable,
            StringComparison.Ordinal
        );

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

    [Fact]
    public void Front_rear_and_side_are_set_against_each_other()
    {
        var outcome = Plain
            .Computes("frontRearAt1kHzDb", "sideToFrontDb", "frontRearMeanDb", "frontRearShapeDb", "frontRearGreatestDb")
            .File("front", "frequency-response", Curve(_ => -38))
            .File("rear", "frequency-response", Curve(_ => -40))
            .File("side", "frequency-response", Curve(_ => -44))
            .Judge();

        Assert.Equal(
            [2m, -6m, 2m, 0m, 2m],
            new[] { "frontRearAt1kHzDb", "sideToFrontDb", "frontRearMeanDb", "frontRearShapeDb", "frontRearGreatestDb" }.Select(
                outcome.Value
            )
        );
    }

    [Fact]
    public void A_side_that_was_measured_on_its_own_axis_is_no_back()
    {
        Assert.Contains(
            Plain.Computes("frontToBackDb", "frontRearMeanDb").Problems,
            p => p.Contains("frontRearAt1kHzDb", StringComparison.Ordinal)
        );
        Assert.Empty(Plain.Computes("frontToBackDb").Problems);
        Assert.DoesNotContain("frontToBackDb", DemoRoutes.Of("TARN-2", "capsule").Find("acoustic")!.Characteristics.Select(c => c.Name));
    }

    [Fact]
    public void In_the_single_sided_model_the_rejection_that_is_computed_is_judged()
    {
        var input = Judging.Nominal("TARN-1", "capsule", "acoustic");
        var poor = input with
        {
            Evidence = [.. input.Evidence.Select(e => e.Name == "rear" ? e with { Bytes = Encoding.UTF8.GetBytes(Curve20To20k(-5)) } : e)],
        };

        Assert.Equal("5.00", poor.Judge().Digits("frontToBackDb"));
        Assert.False(poor.Passes());
        Assert.True(input.Passes());
    }

    /// <summary>A cardioid with 19.8 dB front to back and its side 6 dB below the front.</summary>
    [Fact]
    public void Curves_of_rear_and_side_are_drawn_relative_to_the_front_at_1_kHz()
    {
        var stage = Plain.Stage;
        double At1k(double level) =>
            AcousticCurves.AsJudged(stage, Response(level), Response(-38)).Single(p => p.FrequencyHz == 1000).LevelDb;

        Assert.Equal((0, -19.8, -6), (At1k(-38), At1k(-57.8), At1k(-44)));
    }

    private static Domain.Evidence.FrequencyResponse Response(double level) =>
        Domain.Evidence.FrequencyResponseFile.Read(Encoding.UTF8.GetBytes(Curve(_ => level))).Data!;

    private static string Curve20To20k(double level) =>
        string.Create(CultureInfo.InvariantCulture, $"frequency_hz,level_db\n20,{level}\n1000,{level}\n20000,{level}\n");

    [Fact]
    public void A_required_value_whose_file_is_missing_leaves_no_verdict() =>
        Assert.Contains(
            "frontToBackDb",
            Plain.Computes("frontToBackDb").File("front", "frequency-response", Curve(_ => 0)).Judge().Unreadable,
            StringComparison.Ordinal
        );

    /// <summary>
    /// Published value E9-001: a cardioid measured every 30 degrees has a directivity index of 4.749 dB by zones (4.771 dB exactly).
    /// </summary>
    [Fact]
    public void The_directivity_index_of_a_cardioid_comes_from_its_angles()
    {
        var stage = Angles(30, 60, 90, 120, 150, 180);
        Assert.Equal(4.75m, stage.Judge().Value("directivityIndexDb"));
    }

    [Fact]
    public void Angles_in_another_order_give_the_same_index() =>
        Assert.Equal(
            Angles(30, 60, 90, 120, 150, 180).Judge().Value("directivityIndexDb"),
            Angles(180, 120, 30, 150, 60, 90).Judge().Value("directivityIndexDb")
        );

    [Fact]
    public void Without_the_angle_180_there_is_no_index_but_words()
    {
        var outcome = Angles(30, 60, 90).Judge();
        outcome.Says("no directivity index: it needs the angles 0 and 180");
        Assert.DoesNotContain(outcome.Computed, c => c.Characteristic == "directivityIndexDb");
    }

    /// <summary>Published value E12-004: at 950 hPa a source of constant volume velocity is 0.562 dB weaker than at 1013.25 hPa.</summary>
    [Fact]
    public void The_air_of_the_moment_is_stated_against_the_reference()
    {
        var outcome = Plain
            .Computes("sourceLevelInAirDb")
            .Enter("airTemperatureC", 23)
            .Enter("airPressureHpa", 950)
            .Enter("airHumidityPct", 50)
            .File("front", "frequency-response", Curve(_ => 0))
            .Judge();
        Assert.Equal(-0.56m, outcome.Value("sourceLevelInAirDb"));
    }

    [Fact]
    public void Air_outside_the_reference_conditions_is_said() =>
        Plain
            .MayCompute("sourceLevelInAirDb")
            .Enter("airTemperatureC", 36)
            .Enter("airPressureHpa", 950)
            .Enter("airHumidityPct", 50)
            .File("front", "frequency-response", Curve(_ => 0))
            .Judge()
            .Says("outside the reference conditions");

    [Fact]
    public void Raising_a_bump_never_turns_a_fail_into_a_pass() =>
        Gen.Select(Gen.Double[0, 6], Gen.Double[0, 3]).Sample((bump, more) => !Bumped(bump).Fails() || Bumped(bump + more).Fails());

    // A method keeps its files, so each judgement starts from a new one.
    private static AMethod Plain =>
        AMethod.Named("response-in-mask").Files("frequency-response", "front", "rear", "side").Computes("frontMarginDb").With(Mask);

    private static StageOutcome Bumped(double db) => Plain.File("front", "frequency-response", Curve(f => f == 3000 ? db : 0)).Judge();

    private static AMethod Comparing =>
        Plain.Reads("outputFrontMv", "referenceOutputMv").Computes("sensitivityFrontMvPa", "sensitivityFrontDbvPa");

    private static StageOutcome Compared(decimal output, decimal reference, decimal? known) =>
        (known is { } s ? Comparing.Numbers(("referenceSensitivityMvPa", s)) : Comparing)
            .Enter("outputFrontMv", output)
            .Enter("referenceOutputMv", reference)
            .File("front", "frequency-response", Curve(_ => 0))
            .Judge();

    private static AMethod Angles(params int[] degrees)
    {
        var stage = Plain
            .Files("frequency-response", [.. degrees.Select(Name)])
            .MayCompute("directivityIndexDb")
            .File("front", "frequency-response", Curve(_ => 0));
        return degrees.Aggregate(
            stage,
            (s, d) => s.File(Name(d), "frequency-response", Curve(_ => Math.Max(-120, new FirstOrderPattern(0.5).LevelDb(d))))
        );

        static string Name(int d) => $"angle-{d:000}";
    }

    private static string Curve(Func<double, double> level) =>
        "frequency_hz,level_db\n"
        + string.Concat(
            new double[] { 100, 200, 500, 1000, 2000, 2500, 2800, 3000, 3200, 3500, 5000, 10_000 }.Select(f =>
                string.Create(CultureInfo.InvariantCulture, $"{f},{level(f):0.######}\n")
            )
        );
}
