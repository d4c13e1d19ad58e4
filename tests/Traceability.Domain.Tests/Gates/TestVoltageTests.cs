using Traceability.Domain.Routes;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Work;

namespace Traceability.Domain.Tests.Gates;

/// <summary>Film and backplate are tested below the voltage at which this capsule's film would fall onto its backplate.</summary>
public class TestVoltageTests
{
    private static readonly TestConnection FilmToBackplate = new("testVoltageV", ["film"], ["backplate"]);
    private static readonly TestConnection TiedToBody = new("bodyVoltageV", ["film", "backplate"], ["body"]);

    private static Stage Insulation(decimal? lower, decimal? upper, params TestConnection[] connections) => (
            ARoute.Stage("insulation") with
            {
                Method = "insulation",
                Parameters = new()
                {
                    Terminals = connections,
                    Numbers = new Dictionary<string, decimal> { ["pullInFactor"] = 1.25m },
                },
            }
        ).Measuring("testVoltageV", lower, upper).Measuring("bodyVoltageV", 95, 105);

    private static APart Measured(Stage insulation, params (string Name, string Digits)[] pullIn)
    {
        var stack = pullIn.Aggregate(ARoute.Stage("capacitance"), (s, p) => s.Measuring(p.Name, null, null));
        var part = new APart(ARoute.Of(stack, insulation)).Opened("capacitance");
        part.TryRead(pullIn).Accepted();
        part.TryClose().Accepted();
        return part;
    }

    [Fact]
    public void A_stage_whose_lowest_test_voltage_is_above_pull_in_over_the_factor_does_not_open()
    {
        var part = Measured(Insulation(95, 105, FilmToBackplate), ("pullInV", "80"));

        part.Rule("insulation", "test-voltage").IsNotMet("64 V", "80 V", "1.25");
        part.TryOpen("insulation").IsRefused(RefusalKind.Conflict, "at most 64 V");
    }

    [Theory]
    [InlineData("50.0", true)]
    [InlineData("49.9", false)]
    public void At_the_limit_itself_the_stage_still_opens(string pullIn, bool opens)
    {
        var check = Measured(Insulation(40, 50, FilmToBackplate), ("pullInV", pullIn)).Rule("insulation", "test-voltage");

        Assert.Equal(opens, check.Met);
    }

    [Fact]
    public void An_open_gate_says_the_highest_voltage_before_anybody_connects() =>
        Assert.Contains(
            "at most 61.2 V",
            Measured(Insulation(40, 50, FilmToBackplate), ("pullInV", "76.58")).Rule("insulation", "test-voltage").Because,
            StringComparison.Ordinal
        );

    [Fact]
    public void Of_a_dual_capsule_the_lower_side_counts()
    {
        var check = Measured(Insulation(40, 50, FilmToBackplate), ("pullInFrontV", "88"), ("pullInRearV", "48"))
            .Rule("insulation", "test-voltage");

        check.IsNotMet("38.4 V", "48 V");
    }

    [Fact]
    public void Without_a_known_pull_in_voltage_nothing_is_connected()
    {
        var part = new APart(ARoute.Of(ARoute.Stage("stack"), Insulation(40, 50, FilmToBackplate))).Passed("stack");

        part.Rule("insulation", "test-voltage").IsNotMet("is not known");
    }

    [Fact]
    public void Of_a_dual_capsule_with_one_side_unknown_nothing_is_connected()
    {
        var stack = ARoute.Stage("capacitance").Measuring("pullInFrontV", null, null).Computing("pullInRearV", "V");
        var part = new APart(ARoute.Of(stack, Insulation(40, 50, FilmToBackplate))).Opened("capacitance");
        part.TryRead(("pullInFrontV", "88")).Accepted();
        part.TryClose().Accepted();

        part.Rule("insulation", "test-voltage").IsNotMet("is not known");
    }

    [Fact]
    public void A_higher_voltage_is_permitted_where_film_and_backplate_are_tied_together()
    {
        var part = Measured(Insulation(40, 50, FilmToBackplate, TiedToBody), ("pullInV", "70"));

        part.TryOpen("insulation").Accepted();
        part.TryRead(("bodyVoltageV", "100")).Accepted();
    }

    [Fact]
    public void Of_two_voltages_across_the_gap_each_must_be_permitted()
    {
        var second = new TestConnection("bodyVoltageV", ["film"], ["backplate", "body"]);

        Measured(Insulation(40, 50, FilmToBackplate, second), ("pullInV", "118")).Rule("insulation", "test-voltage").IsNotMet("94.4 V");
        Measured(Insulation(40, 50, FilmToBackplate, second), ("pullInV", "119")).Rule("insulation", "test-voltage").IsMet();
    }

    [Fact]
    public void A_route_that_does_not_say_what_is_tied_is_taken_to_put_its_voltage_across_the_gap() =>
        Measured(Insulation(95, 105), ("pullInV", "80")).Rule("insulation", "test-voltage").IsNotMet("64 V");

    [Fact]
    public void A_voltage_above_the_permitted_one_is_not_taken()
    {
        var part = Measured(Insulation(40, 100, FilmToBackplate), ("pullInV", "70")).Opened("insulation");

        part.TryRead(("testVoltageV", "57")).IsRefused(RefusalKind.Conflict, "at most 56 V");
        part.TryRead(("testVoltageV", "56")).Accepted();
    }

    [Theory]
    [InlineData("TARN-1")]
    [InlineData("TARN-2")]
    public void The_demo_routes_test_film_and_backplate_at_45_V(string model)
    {
        var voltage = Routes.DemoRoutes.Of(model, "capsule").Find("insulation")!.Characteristic("testVoltageV")!;

        Assert.Equal((40m, 45m, 50m), (voltage.Lower, voltage.Nominal, voltage.Upper));
    }
}
