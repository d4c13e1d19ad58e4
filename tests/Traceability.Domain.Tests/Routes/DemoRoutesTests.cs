using Traceability.Domain.Routes;

namespace Traceability.Domain.Tests.Routes;

public class DemoRoutesTests
{
    public static TheoryData<string> Files => [.. DemoRoutes.FileNames];

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_route_file_reads_without_problems(string file)
    {
        Assert.Empty(DemoRoutes.Read(file).Problems);
    }

    [Fact]
    public void There_is_a_route_for_every_kind_of_part_of_both_models_and_one_for_film_lots()
    {
        string[] kinds = ["diaphragm", "capsule", "board-set", "unit"];
        var expected = kinds.SelectMany(k => new[] { $"TARN-1/{k}", $"TARN-2/{k}" }).Append("ANY/film-lot").Order();
        Assert.Equal(expected, DemoRoutes.All.Select(r => $"{r.Model}/{r.Kind}").Order());
    }

    [Theory]
    [InlineData("film-lot", "receipt incoming-inspection release")]
    [InlineData("diaphragm", "mount coarse-tune fine-tune ring-bond cure release-trim ring-resonance")]
    [InlineData("capsule", "clean-stack press-fasten leads capacitance soak-warm soak-cold soak-humid insulation warm-drying acoustic")]
    [InlineData("board-set", "receipt incoming-check")]
    [InlineData(
        "unit",
        "boards-spacers connectors-wiring switches-inner body capsule-in grille-plate functional-check final-acoustic final-inspection"
    )]
    public void Every_stage_of_the_trade_is_there_in_the_order_of_the_work(string kind, string stages)
    {
        Assert.All(DemoRoutes.All.Where(r => r.Kind == kind), r => Assert.Equal(stages.Split(' '), r.Stages.Select(s => s.Code)));
    }

    [Theory]
    [InlineData(
        "TARN-2",
        "front-insulating-ring front-diaphragm front-spacer front-electrode suspension resistive-fabric rear-electrode rear-spacer"
            + " rear-diaphragm rear-insulating-ring screws"
    )]
    [InlineData("TARN-1", "insulating-ring diaphragm spacer electrode suspension resistive-fabric rear-plate screws")]
    public void The_stack_of_a_capsule_has_a_slot_for_each_layer(string model, string positions)
    {
        Assert.Equal(positions.Split(' '), DemoRoutes.Of(model, "capsule").Find("clean-stack")!.Slots.Select(s => s.Position));
    }

    [Fact]
    public void Every_caution_of_the_trade_is_shown_at_some_stage()
    {
        var shown = DemoRoutes.All.SelectMany(r => r.Stages).SelectMany(s => s.Cautions).Distinct().Order();
        Assert.Equal(Cautions.Texts.Keys.Order(), shown);
    }

    [Fact]
    public void Only_the_insulation_tester_must_be_proved_on_the_day()
    {
        Assert.All(DemoRoutes.All.SelectMany(r => r.Stages), s => Assert.Equal(s.Code == "insulation", s.CheckedToday));
    }

    [Fact]
    public void Every_measured_stage_puts_a_value_on_the_certificate()
    {
        string[] measured = ["ring-resonance", "capacitance", "insulation", "acoustic", "functional-check", "final-acoustic"];
        var shown = DemoRoutes
            .All.SelectMany(r => r.Stages)
            .Where(s => s.Characteristics.Any(c => c.OnCertificate))
            .Select(s => s.Code)
            .ToHashSet();
        Assert.Superset(measured.ToHashSet(), shown);
    }
}
