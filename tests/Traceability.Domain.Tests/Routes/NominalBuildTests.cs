using Traceability.Domain.Routes;

namespace Traceability.Domain.Tests.Routes;

/// <summary>
/// A client that knows nothing but the route must be able to take a part through it with the values that the route itself names:
/// nominal readings, a log that keeps to the phases, a response in the middle of the mask.
/// </summary>
public class NominalBuildTests
{
    public static IEnumerable<object[]> Stages =>
        DemoRoutes.All.SelectMany(r => r.Stages.Select(s => new object[] { r.Model, r.Kind, s.Code }));

    [Theory]
    [MemberData(nameof(Stages))]
    public void Every_entered_characteristic_names_a_nominal_value_that_meets_its_limits(string model, string kind, string stage)
    {
        Assert.All(
            StageOf(model, kind, stage).Characteristics.Where(c => c.Entered),
            c => Assert.True(c.Nominal is { } nominal && c.IsMetBy(nominal), c.Name)
        );
    }

    [Theory]
    [MemberData(nameof(Stages))]
    public void A_part_made_from_the_route_s_own_numbers_passes(string model, string kind, string code)
    {
        var stage = StageOf(model, kind, code);
        var outcome = NominalBuild.OfStage(DemoRoutes.Of(model, kind), stage);

        Assert.Null(outcome.Unreadable);
        Assert.DoesNotContain(outcome.Findings, f => f.Fails);
        Assert.Equal(
            stage
                .Characteristics.Where(c =>
                    c is { Entered: false } && (c.Required || outcome.Computed.Any(v => v.Characteristic == c.Name))
                )
                .Select(c => c.Name)
                .Order(),
            outcome.Computed.Select(c => c.Characteristic).Order()
        );
        Assert.All(
            outcome.Computed,
            c => Assert.True(stage.Characteristic(c.Characteristic)!.IsMetBy(c.Value), $"{c.Characteristic} = {c.Digits}")
        );
    }

    [Theory]
    [MemberData(nameof(Stages))]
    public void One_qualified_person_may_do_every_stage(string model, string kind, string stage)
    {
        Assert.Empty(StageOf(model, kind, stage).NotByBuilderOf);
    }

    [Fact]
    public void What_front_and_rear_must_match_in_is_measured_once_on_each_diaphragm()
    {
        var match = DemoRoutes.Of("TARN-2", "capsule").Find("clean-stack")!.Match!;
        Assert.Single(DemoRoutes.Of("TARN-2", "diaphragm").Stages, s => s.Characteristic(match.Characteristic) is not null);
    }

    private static Stage StageOf(string model, string kind, string code) => DemoRoutes.Of(model, kind).Find(code)!;
}
