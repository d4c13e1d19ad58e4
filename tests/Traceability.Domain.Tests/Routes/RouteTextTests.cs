using Traceability.Domain.Routes.Files;
using Traceability.Domain.Stages;

namespace Traceability.Domain.Tests.Routes;

public class RouteTextTests
{
    [Fact]
    public void A_good_file_is_read_as_it_stands()
    {
        var reading = RouteText.Read(ARouteFile.Good, StageMethods.Requirements);

        Assert.Empty(reading.Problems);
        var route = reading.Route!;
        Assert.Equal(
            ("M-1", "capsule", 3, "C", new DateOnly(2026, 1, 31)),
            (route.Model, route.Kind, route.Revision, route.SerialPrefix, route.EffectiveFrom)
        );
        Assert.Equal(["stack", "capacitance", "soak", "insulation", "acoustic"], route.Stages.Select(s => s.Code));
        Assert.Equal(
            [("front", "Front", true), ("rear", "rear", true), ("screws", "screws", false)],
            route.Stages[0].Slots.Select(s => (s.Position, s.Label, s.Required))
        );
        Assert.Equal(
            (2.5m, 3m, 3.5m, 0.1m, true, true),
            route.Stages[0].Characteristics[0] is var c ? (c.Lower, c.Nominal, c.Upper, c.Resolution, c.Entered, c.OnCertificate) : default
        );
        Assert.Equal(12.5m, route.Stages[0].Match!.MaximumDifference);
        Assert.Equal(
            ("stack", true, 60, true),
            (route.Stages[1].ReworkReturnsTo, route.Stages[0].FreesCarrier, route.Stages[2].MinimumOpenMinutes, route.Stages[2].Loads)
        );
        Assert.Equal(
            (5, 30, 2, true),
            (
                route.Stages[3].Waits[0].MinimumMinutes,
                route.Stages[3].Windows[0].MaximumMinutes,
                route.Stages[3].AllowedAttempts,
                route.Stages[3].CheckedToday
            )
        );
        Assert.Equal(
            (40m, 20m, 30, 5),
            route.Stages[2].Parameters.Phases![0] is var p ? (p.TemperatureC, p.HumidityPct, p.MinDwellMinutes, p.MaxGapMinutes) : default
        );
        Assert.Equal((20000m, 300m), (route.Stages[4].Parameters.Mask![1].FrequencyHz, route.Stages[4].Parameters.Numbers["distanceMm"]));
    }

    [Fact]
    public void The_hash_is_that_of_the_text_to_the_last_character()
    {
        var one = RouteText.Read(ARouteFile.Good, StageMethods.Requirements).Route!;

        Assert.Equal(ARouteFile.Good, one.Text);
        Assert.Equal(one.Hash, RouteText.Read(ARouteFile.Good, StageMethods.Requirements).Route!.Hash);
        Assert.NotEqual(one.Hash, RouteText.Read(ARouteFile.Good + "\n", StageMethods.Requirements).Route!.Hash);
        Assert.Matches("^[0-9a-f]{64}$", one.Hash);
    }

    [Fact]
    public void A_route_that_was_loaded_before_its_method_became_stricter_can_still_be_read()
    {
        var (text, _) = ARouteFile.With("numbers: {distanceMm: 300}", "numbers: {widgetMm: 3}");

        Assert.Null(RouteText.Read(text, StageMethods.Requirements).Route);
        Assert.Equal(3, RouteText.ReadKept(text).Route!.Stages[4].Parameters.Numbers["widgetMm"]);
    }

    [Theory]
    [InlineData("", "the file is empty")]
    [InlineData("# nothing yet\n", "the file is empty")]
    [InlineData("just words", "the route must be a list of 'key: value' lines")]
    [InlineData("- one\n- two\n", "the route must be a list of 'key: value' lines")]
    [InlineData("model: M-1\nmodel: M-2\n", "this is not YAML")]
    [InlineData("model: [M-1\n", "this is not YAML")]
    [InlineData("model: \"M-1\n", "this is not YAML")]
    [InlineData("? [a, b]\n: c\n", "a key that is not a plain text")]
    public void What_is_no_route_at_all_is_said_so(string text, string words)
    {
        var reading = RouteText.Read(text, StageMethods.Requirements);

        Assert.Null(reading.Route);
        Assert.Contains(reading.Problems, p => p.Message.Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void A_second_document_in_the_file_is_not_passed_over()
    {
        var reading = RouteText.Read(ARouteFile.Good + "---\nmodel: M-2\n", StageMethods.Requirements);

        Assert.Equal(
            new RouteProblem(ARouteFile.Good.Count(c => c == '\n') + 2, "a file holds one route; here a second document begins"),
            Assert.Single(reading.Problems)
        );
    }

    [Fact]
    public void A_route_without_stages_is_none() =>
        Assert.Contains(
            "at least one stage",
            RouteText
                .Read(ARouteFile.Good[..ARouteFile.Good.IndexOf("stages:", StringComparison.Ordinal)], StageMethods.Requirements)
                .Problems.Single()
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Nesting_so_deep_that_reading_would_run_out_of_stack_is_a_problem_not_a_crash()
    {
        foreach (
            var deep in new[]
            {
                new string('[', 100_000),
                string.Concat(Enumerable.Repeat("{a: ", 100_000)),
                string.Concat(Enumerable.Repeat("- ", 100_000)),
            }
        )
        {
            Assert.NotEmpty(RouteText.Read("stages: " + deep, StageMethods.Requirements).Problems);
            Assert.NotEmpty(RouteText.Read(deep, StageMethods.Requirements).Problems);
        }
    }

    [Fact]
    public void All_mistakes_of_a_file_are_said_at_once_from_top_to_bottom()
    {
        var text = ARouteFile
            .Good.Replace("revision: 3", "revision: x", StringComparison.Ordinal)
            .Replace("loads: true", "loads: x", StringComparison.Ordinal)
            .Replace("unit: GOhm}", "unit: G}", StringComparison.Ordinal);

        var lines = RouteText.Read(text, StageMethods.Requirements).Problems.Select(p => p.Line).ToList();

        Assert.Equal(3, lines.Count);
        Assert.Equal(lines.Order(), lines);
    }
}
