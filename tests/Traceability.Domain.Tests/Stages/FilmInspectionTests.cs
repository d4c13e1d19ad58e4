using CsCheck;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Tests.Stages;

public class FilmInspectionTests
{
    private static StageInput Nominal => Judging.Nominal("ANY", "film-lot", "incoming-inspection");

    /// <summary>Reference sheet A3-001 and A3-002: densities of PET and gold from memory (CRC Handbook).</summary>
    [Theory]
    [InlineData(6, 50, "9.305")]
    [InlineData(3, 40, "4.942")]
    public void Mass_per_area_is_the_sum_of_the_layers(int baseUm, int metalNm, string gramsPerM2) =>
        Assert.Equal(
            gramsPerM2,
            Nominal.With(("baseThicknessUm", baseUm), ("metalThicknessNm", metalNm)).Judge().Digits("arealDensityGm2")
        );

    [Fact]
    public void The_metal_of_the_route_is_taken_instead_of_gold() =>
        Assert.Equal(
            "8.435",
            Nominal.With(("metalThicknessNm", 35)).WithNumbers(("metalDensityKgM3", 2700)).Judge().Digits("arealDensityGm2")
        );

    /// <summary>A disc of 50 mm has pi/4 * 25 cm2 = 19.635 cm2 (geometry, by hand): 18.27 mg on it are 9.305 g/m2.</summary>
    [Fact]
    public void A_weighed_disc_is_compared_with_the_layers()
    {
        var outcome = Nominal.With(("discMassMg", 18.27m)).Judge();
        Assert.Equal(("9.305", "0.00"), (outcome.Digits("weighedArealDensityGm2"), outcome.Digits("weighingDeparturePct")));
    }

    [Theory]
    [InlineData(19.18, true)]
    [InlineData(19.19, false)]
    [InlineData(17.36, true)]
    [InlineData(17.35, false)]
    public void A_disc_more_than_five_percent_off_fails(double milligrams, bool passes) =>
        Assert.Equal(passes, Nominal.With(("discMassMg", (decimal)milligrams)).Passes());

    [Fact]
    public void The_departure_is_judged_at_its_limits() =>
        Nominal.With(("discMassMg", 18.5m)).JudgesAtItsLimits("weighingDeparturePct", 0.01m);

    [Fact]
    public void Without_weighing_and_sheet_resistance_the_layers_alone_are_judged()
    {
        var input = Nominal.With(("discMassMg", null), ("sheetResistanceOhm", null));
        Assert.True(input.Passes());
        Assert.Equal("arealDensityGm2", Assert.Single(input.Judge().Computed).Characteristic);
    }

    /// <summary>Bulk gold of 50 nm has 2.214e-8 / 50e-9 = 0.443 Ohm/sq (by hand; resistivity from memory).</summary>
    [Theory]
    [InlineData(0.40, "lower than bulk metal")]
    [InlineData(0.44, null)]
    [InlineData(1.77, null)]
    [InlineData(1.80, "thinner than stated")]
    public void A_sheet_resistance_that_does_not_fit_the_metal_is_a_warning_and_no_verdict(double ohm, string? says)
    {
        var input = Nominal.With(("sheetResistanceOhm", (decimal)ohm));
        Assert.True(input.Passes());
        Assert.Equal(says is null, input.Judge().Findings.Count == 0);
        Assert.All(input.Judge().Findings, f => Assert.Contains(says!, f.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void The_sheet_resistance_is_told_in_times_that_of_bulk_metal() =>
        Assert.Equal("2.26", Nominal.With(("sheetResistanceOhm", 1)).Judge().Digits("sheetResistanceOverBulk"));

    [Theory]
    [InlineData("baseThicknessUm", 0, "base film of 0 um cannot be")]
    [InlineData("baseThicknessUm", -6, "base film of -6 um cannot be")]
    [InlineData("metalThicknessNm", -1, "Metal of -1 nm cannot be")]
    [InlineData("discMassMg", 0, "disc of 0 mg cannot be")]
    [InlineData("discMassMg", -18, "set to zero with the disc on it")]
    [InlineData("sheetResistanceOhm", 0, "sheet resistance of 0 Ohm/sq cannot be")]
    public void Impossible_readings_are_not_judged(string characteristic, int value, string words) =>
        Nominal.With((characteristic, value)).IsNotJudged(words);

    [Fact]
    public void A_film_thicker_than_any_number_holds_is_not_judged() =>
        Nominal.With(("baseThicknessUm", decimal.MaxValue)).IsNotJudged("Mass per area from the layers");

    [Fact]
    public void A_heavier_disc_never_departs_less() =>
        Gen.Select(Gen.Double[10, 40], Gen.Double[0, 10]).Sample((mass, more) => Assert.True(Departure(mass + more) >= Departure(mass)));

    [Fact]
    public void A_disc_that_failed_fails_the_more_when_it_is_further_off() =>
        Gen.Select(Gen.Double[5, 60], Gen.Double[0, 10])
            .Sample(
                (mass, more) =>
                {
                    var further = mass > 18.27 ? mass + more : Math.Max(0.01, mass - more);
                    Assert.False(Passes(mass) == false && Passes(further) == true, $"{mass} fails, {further} passes");
                }
            );

    private static decimal Departure(double milligrams) =>
        Nominal.With(("discMassMg", (decimal)milligrams)).Judge().Value("weighingDeparturePct");

    private static bool? Passes(double milligrams) => Nominal.With(("discMassMg", (decimal)milligrams)).Passes();
}
