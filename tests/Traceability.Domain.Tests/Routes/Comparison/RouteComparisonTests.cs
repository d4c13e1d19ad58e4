using CsCheck;
using Traceability.Domain.Routes;
using Traceability.Domain.Routes.Comparison;
using static Traceability.Domain.Tests.Routes.Comparison.ComparedRoutes;

namespace Traceability.Domain.Tests.Routes.Comparison;

/// <summary>Nothing that a route file can say escapes the comparison.</summary>
public class RouteComparisonTests
{
    [Fact]
    public void The_good_file_compared_with_itself_has_no_difference() =>
        Assert.False(RouteComparison.Of(Read(ARouteFile.Good), Read(ARouteFile.Good)).Differs);

    [Theory]
    [InlineData("upper: 3.5", "upper: 3.6", "stack", RouteAspect.Characteristic, "torqueNcm", "upper", "3.5", "3.6")]
    [InlineData("lower: 2.5, ", "", "stack", RouteAspect.Characteristic, "torqueNcm", "lower", "2.5", null)]
    [InlineData("nominal: 3, ", "nominal: 3.1, ", "stack", RouteAspect.Characteristic, "torqueNcm", "nominal", "3", "3.1")]
    [InlineData("resolution: 0.1", "resolution: 0.01", "stack", RouteAspect.Characteristic, "torqueNcm", "resolution", "0.1", "0.01")]
    [InlineData(
        "resolution: 0.1",
        "expandedUncertainty: 0.2, resolution: 0.1",
        "stack",
        RouteAspect.Characteristic,
        "torqueNcm",
        "expandedUncertainty",
        null,
        "0.2"
    )]
    [InlineData(
        "label: Torque, unit: Ncm",
        "label: Moment, unit: Ncm",
        "stack",
        RouteAspect.Characteristic,
        "torqueNcm",
        "label",
        "Torque",
        "Moment"
    )]
    [InlineData(
        "onCertificate: true",
        "onCertificate: false",
        "stack",
        RouteAspect.Characteristic,
        "torqueNcm",
        "onCertificate",
        "true",
        "false"
    )]
    [InlineData("lotKind: screws, required: false", "lotKind: screws", "stack", RouteAspect.Slot, "screws", "required", "false", "true")]
    [InlineData("lotKind: screws", "lotKind: bolts", "stack", RouteAspect.Slot, "screws", "lotKind", "screws", "bolts")]
    [InlineData("minimumMinutes: 5", "minimumMinutes: 6", "insulation", RouteAspect.Wait, "soak", "minimumMinutes", "5", "6")]
    [InlineData("maximumMinutes: 30", "maximumMinutes: 31", "insulation", RouteAspect.Window, "soak", "maximumMinutes", "30", "31")]
    [InlineData(
        "instrumentKinds: [insulation-tester]",
        "instrumentKinds: [insulation-tester, thermometer]",
        "insulation",
        RouteAspect.Instrument,
        "thermometer",
        "instrumentKind",
        null,
        "thermometer"
    )]
    [InlineData(
        "tied: [film], against: [backplate]",
        "tied: [film, backplate], against: [body]",
        "insulation",
        RouteAspect.Parameter,
        "testVoltageV",
        "terminals",
        "film / backplate",
        "film + backplate / body"
    )]
    [InlineData("checkedToday: true", "checkedToday: false", "insulation", RouteAspect.Instrument, "", "checkedToday", "true", "false")]
    [InlineData(
        "qualification: stacking",
        "qualification: building",
        "stack",
        RouteAspect.People,
        "",
        "qualification",
        "stacking",
        "building"
    )]
    [InlineData(
        "notByBuilderOf: [stack]",
        "notByBuilderOf: []",
        "insulation",
        RouteAspect.People,
        "stack",
        "notByBuilderOf",
        "stack",
        null
    )]
    [InlineData("cautions: [solvent]", "cautions: [solvent, esd]", "stack", RouteAspect.Caution, "esd", "caution", null, "esd")]
    [InlineData(
        "{name: front, kind: frequency-response}",
        "{name: front, kind: frequency-response, required: false}",
        "acoustic",
        RouteAspect.Evidence,
        "front",
        "required",
        "true",
        "false"
    )]
    [InlineData(
        "maximumDifference: 12.5",
        "maximumDifference: 10",
        "stack",
        RouteAspect.Match,
        "resonanceHz",
        "maximumDifference",
        "12.5",
        "10"
    )]
    [InlineData("minDwellMinutes: 30", "minDwellMinutes: 45", "soak", RouteAspect.Parameter, "warm", "minDwellMinutes", "30", "45")]
    [InlineData(
        "{frequencyHz: 20, lowerDb: -6, upperDb: 6}",
        "{frequencyHz: 20, lowerDb: -3, upperDb: 6}",
        "acoustic",
        RouteAspect.Parameter,
        "20 Hz",
        "lowerDb",
        "-6",
        "-3"
    )]
    [InlineData("distanceMm: 300", "distanceMm: 500", "acoustic", RouteAspect.Parameter, "distanceMm", "number", "300", "500")]
    [InlineData(
        "toleranceSource: workshop procedure 4",
        "toleranceSource: workshop procedure 5",
        "soak",
        RouteAspect.Parameter,
        "",
        "toleranceSource",
        "workshop procedure 4",
        "workshop procedure 5"
    )]
    [InlineData("minimumOpenMinutes: 60", "minimumOpenMinutes: 90", "soak", RouteAspect.Work, "", "minimumOpenMinutes", "60", "90")]
    [InlineData("allowedAttempts: 2", "allowedAttempts: 3", "insulation", RouteAspect.Work, "", "allowedAttempts", "2", "3")]
    [InlineData(
        "reworkReturnsTo: stack",
        "reworkReturnsTo: capacitance",
        "capacitance",
        RouteAspect.Work,
        "",
        "reworkReturnsTo",
        "stack",
        "capacitance"
    )]
    [InlineData("loads: true", "loads: false", "soak", RouteAspect.Work, "", "loads", "true", "false")]
    [InlineData("freesCarrier: true", "freesCarrier: false", "stack", RouteAspect.Work, "", "freesCarrier", "true", "false")]
    [InlineData(
        "title: Insulation test",
        "title: Insulation",
        "insulation",
        RouteAspect.Work,
        "",
        "title",
        "Insulation test",
        "Insulation"
    )]
    public void A_change_of_the_file_is_one_line_in_its_stage(
        string good,
        string changed,
        string stage,
        RouteAspect aspect,
        string item,
        string field,
        string? left,
        string? right
    )
    {
        var compared = RouteComparison.Of(Read(ARouteFile.Good), Read(ARouteFile.With(good, changed).Text));

        var differing = Assert.Single(compared.Stages, s => s.Differs);
        Assert.Equal(stage, differing.Code);
        Assert.Equal(new ComparedLine(aspect, item, field, left, right), Assert.Single(differing.Differences));
    }

    [Fact]
    public void Digits_that_say_the_same_number_are_no_difference() =>
        Assert.False(RouteComparison.Of(Read(ARouteFile.Good), Read(ARouteFile.With("upper: 3.5", "upper: 3.500").Text)).Differs);

    [Fact]
    public void A_stage_that_changed_places_with_its_neighbour_is_moved_and_so_is_the_neighbour()
    {
        var compared = RouteComparison.Of(
            RouteOf([new("a", "A", "m"), new("b", "B", "m"), new("c", "C", "m")]),
            RouteOf([new("b", "B", "m"), new("a", "A", "m"), new("c", "C", "m")])
        );
        Assert.Equal(["b", "a", "c"], compared.Stages.Select(s => s.Code));
        Assert.Equal(["b", "a", "c"], compared.Stages.Where(s => s.Moved).Select(s => s.Code));
        Assert.Equal(("b", "a"), (compared.Stages[2].LeftAfter, compared.Stages[2].RightAfter));
    }

    [Fact]
    public void A_new_stage_between_two_moves_neither()
    {
        var compared = RouteComparison.Of(
            RouteOf([new("a", "A", "m"), new("b", "B", "m")]),
            RouteOf([new("a", "A", "m"), new("x", "X", "m"), new("b", "B", "m")])
        );
        Assert.Equal([Difference.Same, Difference.Added, Difference.Same], compared.Stages.Select(s => s.Difference));
        Assert.DoesNotContain(compared.Stages, s => s.Moved);
    }

    [Fact]
    public void A_stage_that_is_gone_stands_where_it_was()
    {
        var compared = RouteComparison.Of(
            RouteOf([new("x", "X", "m"), new("a", "A", "m"), new("y", "Y", "m"), new("b", "B", "m")]),
            RouteOf([new("a", "A", "m"), new("b", "B", "m")])
        );
        Assert.Equal(["x", "a", "y", "b"], compared.Stages.Select(s => s.Code));
        Assert.Equal([Difference.Removed, Difference.Same, Difference.Removed, Difference.Same], compared.Stages.Select(s => s.Difference));
    }

    [Fact]
    public void Another_order_of_the_slots_is_a_difference()
    {
        var text = ARouteFile.Good.Split('\n').ToList();
        var at = text.FindIndex(l => l.Contains("position: front", StringComparison.Ordinal));
        (text[at], text[at + 1]) = (text[at + 1], text[at]);
        var line = Assert.Single(
            RouteComparison.Of(Read(ARouteFile.Good), Read(string.Join('\n', text))).Stages.Single(s => s.Differs).Differences
        );
        Assert.Equal(new(RouteAspect.Slot, "", "order", "front, rear, screws", "rear, front, screws"), line);
    }

    /// <summary>
    /// A property that is added to a route must be added to the comparison and here; one that follows from others (IsMain, Acceptance) only
    /// here.
    /// </summary>
    [Fact]
    public void Every_property_of_a_route_is_known_to_the_comparison()
    {
        Assert.Equal(22, PropertiesOf<Stage>());
        Assert.Equal(14, PropertiesOf<Characteristic>());
        Assert.Equal(6, PropertiesOf<Slot>());
        Assert.Equal(3, PropertiesOf<EvidenceNeed>());
        Assert.Equal(5, PropertiesOf<MatchRule>());
        Assert.Equal(7, PropertiesOf<StageParameters>());
        Assert.Equal(3, PropertiesOf<TestConnection>());
        Assert.Equal(12, PropertiesOf<SoakPhaseParameters>());
    }

    private static int PropertiesOf<T>() =>
        typeof(T).GetProperties(System.Reflection.BindingFlags.Public | System.Reflection.BindingFlags.Instance).Length;
}
