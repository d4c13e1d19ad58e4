using System.Globalization;
using System.Text;
using CsCheck;
using Traceability.Domain.Stages.AcousticTest.Directions;
using Traceability.Domain.Stages.AcousticTest.Response;
using Traceability.Domain.Stages.Methods;
using Traceability.Domain.Tests.Routes;
using static Traceability.Domain.Tests.Stages.AcousticTest.MaskedResponse;

namespace Traceability.Domain.Tests.Stages.AcousticTest;

public class AcousticMethodTests
{
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
    private static StageOutcome Bumped(double db) => Plain.File("front", "frequency-response", Curve(f => f == 3000 ? db : 0)).Judge();

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
}
