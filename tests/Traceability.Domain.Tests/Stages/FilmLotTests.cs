using Traceability.Domain.Stages.FilmLot;

namespace Traceability.Domain.Tests.Stages;

public class FilmLotTests
{
    [Fact]
    public void Fifty_nanometres_of_gold_add_more_than_a_tenth()
    {
        FilmLayer film = new(6e-6, FilmMaterials.PetKgPerM3);
        var bare = ArealDensity.FromLayers(film);
        Assert.Equal(0.1157, ArealDensity.FromLayers(film, new FilmLayer(50e-9, FilmMaterials.GoldKgPerM3)) / bare - 1, 1e-4);
    }

    [Fact]
    public void A_weighed_disc_gives_back_the_density_it_was_cut_from()
    {
        var sigma = ArealDensity.FromPunchedDisc(0.009305 * Math.PI * 0.02 * 0.02 / 4, 0.02);
        Assert.Equal(0.009305, sigma, 1e-12);
        Assert.Equal(0.1, ArealDensity.RelativeDeparture(1.1 * sigma, sigma), 1e-12);
    }

    [Theory]
    [InlineData(0.40, SheetResistancePlausibility.LayerThickerThanStated)]
    [InlineData(0.44, SheetResistancePlausibility.Plausible)]
    [InlineData(1.5, SheetResistancePlausibility.Plausible)]
    [InlineData(1.8, SheetResistancePlausibility.LayerThinnerOrBroken)]
    public void Sheet_resistance_tells_on_the_thickness(double measured, SheetResistancePlausibility expected) =>
        Assert.Equal(expected, SheetResistance.Judge(measured, FilmMaterials.GoldOhmM, 50e-9));

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1e-6)]
    [InlineData(double.NaN)]
    public void A_film_without_thickness_is_refused(double thickness)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ArealDensity.FromLayers(new(thickness, 1390)));
        Assert.Throws<ArgumentOutOfRangeException>(() => SheetResistance.Judge(0.5, 2e-8, thickness));
        Assert.Throws<ArgumentOutOfRangeException>(() => ArealDensity.FromPunchedDisc(1e-6, thickness));
    }
}
