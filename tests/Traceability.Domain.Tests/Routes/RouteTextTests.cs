using Traceability.Domain.Routes.Files;
using Traceability.Domain.Stages;

namespace Traceability.Domain.Tests.Routes;

public class RouteTextTests
{
    private static readonly string[] MethodWords =
    [
        "its method",
        "where its tolerances",
        "an insulation test says",
        "no terminal",
        "two poles",
        "the voltage of a test",
        "at least 1",
    ];

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

    [Theory]
    // Keys that nobody knows, at every level.
    [InlineData("title: Dual capsule", "titel: Dual capsule", "the route has no key 'titel'")]
    [InlineData("loads: true", "load: true", "a stage has no key 'load'")]
    [InlineData("{position: rear, partKind", "{position: rear, colour: red, partKind", "a slot has no key 'colour'")]
    [InlineData("label: Torque, unit", "labell: Torque, unit", "a characteristic has no key 'labell'")]
    [InlineData("{afterStage: soak, minimumMinutes: 5}", "{afterStage: soak, minimumMinutes: 5, hours: 1}", "a wait has no key 'hours'")]
    [InlineData(
        "{afterStage: soak, maximumMinutes: 30}",
        "{afterStage: soak, maximumMinutes: 30, hours: 1}",
        "a window has no key 'hours'"
    )]
    [InlineData("required: true}", "required: true, size: 4}", "a piece of evidence has no key 'size'")]
    [InlineData("maxGapMinutes: 5}", "maxGap: 5}", "a phase has no key 'maxGap'")]
    [InlineData("{frequencyHz: 20, lowerDb", "{frequencyHz: 20, q: 1, lowerDb", "a mask point has no key 'q'")]
    [InlineData("maskedEvidence: [front]", "masked: [front]", "parameters has no key 'masked'")]
    [InlineData("characteristic: resonanceHz", "characteristics: resonanceHz", "match has no key 'characteristics'")]
    // Names that nobody knows.
    [InlineData("method: insulation", "method: insulatoin", "there is no method 'insulatoin'; known: bond, capacitance, climate-soak")]
    [InlineData("Torque, unit: Ncm", "Torque, unit: Nm", "There is no unit \"Nm\"")]
    [InlineData("Torque, unit: Ncm", "Torque, unit: ncm", "write Ncm")]
    [InlineData("cautions: [solvent]", "cautions: [solvents]", "no caution 'solvents'; known: ")]
    [InlineData("kind: frequency-response", "kind: response", "unknown kind of evidence 'response'; known: climate-log")]
    // Values that are missing or of another kind.
    [InlineData("model: M-1", "", "'model' is missing")]
    [InlineData("title: Dual capsule", "", "'title' is missing")]
    [InlineData("title: Soak", "", "'title' is missing")]
    [InlineData("effectiveFrom: 2026-01-31", "effectiveFrom: 31.1.2026", "'effectiveFrom' must be a date such as 2026-01-31")]
    [InlineData("effectiveFrom: 2026-01-31", "effectiveFrom: 2026-02-30", "'effectiveFrom' must be a date")]
    [InlineData("revision: 3", "revision: three", "'revision' must be a number")]
    [InlineData("revision: 3", "revision: 3.5", "'revision' must be a whole number")]
    [InlineData("revision: 3", "revision: 99999999999", "'revision' must be a whole number")]
    [InlineData("revision: 3", "revision: 0", "'revision' must be at least 1")]
    [InlineData("revision: 3", "revision: [3]", "'revision' must be a number")]
    [InlineData("serialPrefix: C", "serialPrefix:", "'serialPrefix' must be a text")]
    [InlineData("serialPrefix: C", "serialPrefix: C2", "'serialPrefix' must be one to three letters")]
    [InlineData("serialPrefix: C", "serialPrefix: CAPS", "'serialPrefix' must be one to three letters")]
    [InlineData("loads: true", "loads: yes", "'loads' must be true or false")]
    [InlineData("lower: 2.5,", "lower: 'about 2',", "'lower' must be a number")]
    [InlineData("lower: 2.5,", "lower: 1e40,", "'lower' must be a number")]
    [InlineData("resolution: 0.1", "resolution: 0", "'resolution' must be above 0")]
    [InlineData("resolution: 0.1", "expandedUncertainty: 0", "'expandedUncertainty' must be above 0")]
    [InlineData("resolution: 0.1", "decisionRule: lenient", "unknown decision rule 'lenient'; known: simple, guarded")]
    [InlineData("resolution: 0.1", "decisionRule: guarded", "guarded acceptance needs 'expandedUncertainty' and a limit")]
    [InlineData(
        "resolution: 0.1",
        "decisionRule: guarded, expandedUncertainty: 0.61",
        "guard bands of 0.501725 inside both limits leave no value that could pass"
    )]
    [InlineData("minimumOpenMinutes: 60", "minimumOpenMinutes: -1", "'minimumOpenMinutes' must be at least 0")]
    [InlineData("allowedAttempts: 2", "allowedAttempts: 0", "'allowedAttempts' must be at least 1")]
    [InlineData("{afterStage: soak, minimumMinutes: 5}", "{afterStage: soak}", "'minimumMinutes' is missing")]
    [InlineData("{afterStage: soak, minimumMinutes: 5}", "{afterStage: soak, minimumMinutes: -5}", "'minimumMinutes' must be at least 0")]
    [InlineData("{afterStage: soak, maximumMinutes: 30}", "{afterStage: soak}", "'maximumMinutes' is missing")]
    [InlineData("minDwellMinutes: 30,", "", "'minDwellMinutes' is missing")]
    [InlineData("maximumDifference: 12.5", "maximumDifference: -1", "'maximumDifference' must be at least 0")]
    [InlineData("cautions: [solvent]", "cautions: solvent", "'cautions' must be a list")]
    [InlineData("cautions: [solvent]", "cautions: [[solvent]]", "'cautions' must be a list of texts")]
    [InlineData("numbers: {distanceMm: 300}", "numbers: {distanceMm: far}", "'distanceMm' must be a number")]
    [InlineData("numbers: {distanceMm: 300}", "numbers: 300", "numbers must be a list of 'key: value' lines")]
    [InlineData("- {name: front, kind: frequency-response}", "- front", "a piece of evidence must be a list of 'key: value' lines")]
    [InlineData("cautions: [solvent]", "[cautions]: solvent", "a stage has a key that is not a plain text")]
    // What contradicts itself.
    [InlineData(
        "lower: 2.5, upper: 3.5",
        "lower: 3.5, upper: 2.5",
        "the limits of 'torqueNcm' contradict each other: nominal 3, lower 3.5, upper 2.5"
    )]
    [InlineData("nominal: 3,", "nominal: 3.6,", "contradict each other")]
    [InlineData("nominal: 3,", "nominal: 2.4,", "contradict each other")]
    [InlineData(
        "{position: rear, partKind: diaphragm}",
        "{position: rear, partKind: diaphragm, lotKind: film}",
        "a slot accepts either 'lotKind' or 'partKind'"
    )]
    [InlineData("{position: rear, partKind: diaphragm}", "{position: rear}", "a slot accepts either 'lotKind' or 'partKind'")]
    [InlineData("{position: rear, partKind: diaphragm}", "{position: front, partKind: diaphragm}", "position 'front' is there twice")]
    [InlineData(
        "{name: capacitanceRearPf, unit: pF}",
        "{name: capacitanceFrontPf, unit: pF}",
        "characteristic 'capacitanceFrontPf' is there twice"
    )]
    [InlineData("code: capacitance", "code: stack", "stage 'stack' is there twice")]
    [InlineData("positions: [front, rear]", "positions: [front, screws]", "'match' names 'screws', which is not a slot for a part")]
    [InlineData("positions: [front, rear]", "positions: [front]", "'match' compares two positions or more")]
    [InlineData(
        "{afterStage: soak, minimumMinutes: 5}",
        "{afterStage: soak, minimumMinutes: 31}",
        "must wait 31 min after 'soak' but start within 30 min of it"
    )]
    // Stages that are not earlier ones.
    [InlineData(
        "{afterStage: soak, minimumMinutes: 5}",
        "{afterStage: acoustic, minimumMinutes: 5}",
        "refers to 'acoustic', which is not an earlier stage"
    )]
    [InlineData(
        "{afterStage: soak, maximumMinutes: 30}",
        "{afterStage: insulation, maximumMinutes: 30}",
        "refers to 'insulation', which is not an earlier stage"
    )]
    [InlineData("notByBuilderOf: [stack]", "notByBuilderOf: [polish]", "refers to 'polish', which is not an earlier stage")]
    [InlineData("reworkReturnsTo: stack", "reworkReturnsTo: soak", "rework returns to 'soak', which is not an earlier stage")]
    // What a method needs.
    [InlineData("{name: capacitanceRearPf, unit: pF}", "{name: rearPf, unit: pF}", "its method reads 'capacitanceRearPf'")]
    [InlineData(
        "{name: capacitanceRearPf, unit: pF}",
        "{name: capacitanceRearPf, unit: pF, required: false}",
        "its method reads 'capacitanceRearPf'"
    )]
    [InlineData("unit: pct, upper: 5, entered: false", "unit: pct, upper: 5", "its method computes 'asymmetryPct'")]
    [InlineData(
        "resolution: 0.1, onCertificate",
        "entered: false, onCertificate",
        "its method computes nothing, so 'torqueNcm' must be entered"
    )]
    [InlineData("toleranceSource: workshop procedure 4", "", "says where its tolerances come from")]
    // What its method does not read.
    [InlineData(
        "numbers: {distanceMm: 300}",
        "numbers: {distanceMM: 300}",
        "method 'response-in-mask' reads no number 'distanceMM'; it reads: crackleHoldMs, crackleTimesFloor, directivityHz, distanceMm"
    )]
    [InlineData("numbers: {distanceMm: 300}", "numbers: {distanceMm: 300, smothingPerOctave: 6}", "reads no number 'smothingPerOctave'")]
    [InlineData("numbers: {distanceMm: 300}", "numbers: {distanceMm: -300}", "the number 'distanceMm' must be above zero")]
    [InlineData(
        "numbers: {pullInFactor: 1.25}",
        "numbers: {pullInFactor: 1.25, biasResistorGOhm: 1}",
        "method 'insulation' reads no number 'biasResistorGOhm'; it reads: biasResistorGohm, electrificationSeconds"
    )]
    [InlineData(
        "numbers: {pullInFactor: 1.25}",
        "maskedEvidence: [front], numbers: {pullInFactor: 1.25}",
        "method 'insulation' reads no 'maskedEvidence'"
    )]
    [InlineData(
        "numbers: {pullInFactor: 1.25}",
        "numbers: {pullInFactor: 0.9}",
        "'pullInFactor' is the pull-in voltage over the highest permitted test voltage: at least 1"
    )]
    [InlineData(
        ", terminals: [{voltage: testVoltageV, tied: [film], against: [backplate]}]",
        "",
        "an insulation test says under 'parameters: terminals' between what its voltages are put"
    )]
    [InlineData("tied: [film]", "tied: [foil]", "there is no terminal 'foil'; known: film, backplate")]
    [InlineData("against: [backplate]", "against: [film]", "'testVoltageV' is put between two poles")]
    [InlineData(
        "{name: testVoltageV, unit: V, lower: 40, upper: 50}",
        "{name: testVoltageV, unit: V, upper: 50}",
        "'testVoltageV' is the voltage of a test: give that characteristic"
    )]
    [InlineData(
        "reworkReturnsTo: stack",
        "parameters: {numbers: {smoothingPerOctave: 6}}",
        "method 'capacitance' reads no number 'smoothingPerOctave'"
    )]
    // Names that could not be printed, scanned or put in an address.
    [InlineData("kind: capsule", "kind: Capsule", "'kind' must be small letters and hyphens")]
    [InlineData("model: M-1", "model: M/1", "'model' must be letters, digits and hyphens")]
    [InlineData("model: M-1", "model: \"M-1\\n\"", "'model' must be letters, digits and hyphens")]
    [InlineData("code: soak", "code: Soak 2", "'code' must be small letters, digits and hyphens")]
    // Two people.
    [InlineData("approvedBy: P2", "approvedBy: P1", "'P1' may not approve a route of their own")]
    [InlineData("approvedBy: P2", "approvedBy: p1", "may not approve a route of their own")]
    public void A_mistake_is_named_with_the_line_where_it_stands(string good, string bad, string words)
    {
        var (text, line) = ARouteFile.With(good, bad);

        var reading = RouteText.Read(text, StageMethods.Requirements);

        Assert.Null(reading.Route);
        var problem = Assert.Single(reading.Problems, p => p.Message.Contains(words, StringComparison.Ordinal));
        // What is missing stands nowhere: the line is that of the map it is missing from. What a method lacks is said at its name.
        var nearby =
            words.Contains("is missing", StringComparison.Ordinal) || MethodWords.Any(w => words.Contains(w, StringComparison.Ordinal));
        Assert.True(nearby ? Math.Abs(problem.Line - line) <= 15 : problem.Line == line, $"line {line} expected: {problem}");
    }

    public static TheoryData<string> EveryMethod => [.. StageMethods.Names];

    [Theory]
    [MemberData(nameof(EveryMethod))]
    public void A_number_that_no_method_knows_is_refused_at_its_own_line_by_every_method(string method)
    {
        var text = $"""
            model: M-1
            kind: capsule
            title: Capsule
            serialPrefix: C
            author: P1
            approvedBy: P2
            effectiveFrom: 2026-01-31
            stages:
              - code: stage
                title: Stage
                method: {method}
                parameters:
                  numbers:
                    widgetMm: 3
            """;

        var problem = Assert.Single(
            RouteText.Read(text, StageMethods.Requirements).Problems,
            p => p.Message.Contains("widgetMm", StringComparison.Ordinal)
        );

        Assert.Equal(14, problem.Line);
        Assert.Contains($"method '{method}' reads no number 'widgetMm'", problem.Message, StringComparison.Ordinal);
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
