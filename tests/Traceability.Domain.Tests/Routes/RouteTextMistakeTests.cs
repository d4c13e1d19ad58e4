using Traceability.Domain.Routes.Files;
using Traceability.Domain.Stages;

namespace Traceability.Domain.Tests.Routes;

/// <summary>Every mistake of a file is named with the line where it stands.</summary>
public class RouteTextMistakeTests
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
}
