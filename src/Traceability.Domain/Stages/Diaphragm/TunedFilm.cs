using Traceability.Domain.Stages.FilmLot;
using static System.FormattableString;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>
/// What is known of the film on the bench: its layers from the film lot that is fitted (or else from the route), its stiffness, and the fixture
/// that holds it.
/// </summary>
internal sealed record TunedFilm(double ArealDensityKgPerM2, double BaseThicknessM, FilmStiffness Stiffness)
{
    /// <summary>BOPET, from memory.</summary>
    private const double UsualYoungsModulusPa = 4.5e9;

    /// <summary>BOPET, from memory.</summary>
    private const double UsualPoissonRatio = 0.38;

    /// <summary>Brass ring and BOPET, 1/K, from memory.</summary>
    private const double BrassPerK = 19e-6, FilmPerK = 17e-6;

    /// <summary>BOPET, strain per % RH, from memory and doubtful within a factor of two.</summary>
    private const double SwellingPerPct = 6e-6;

    private const double WarnFromShareOfYield = 0.5;

    public static TunedFilm? Of(StageInput input)
    {
        var thicknessUm = input.Film?.FilmBaseThicknessUm ?? input.Number("baseThicknessUm");
        var metalNm = input.Film?.FilmMetalThicknessNm ?? input.Number("metalThicknessNm");
        if (thicknessUm is not > 0 || metalNm is not >= 0)
        {
            return null;
        }

        var thickness = (double)thicknessUm * 1e-6;
        var density = ArealDensity.FromLayers(
            new(thickness, (double)(input.Number("baseDensityKgM3") ?? (decimal)FilmMaterials.PetKgPerM3)),
            new FilmLayer((double)metalNm * 1e-9, (double)(input.Number("metalDensityKgM3") ?? (decimal)FilmMaterials.GoldKgPerM3)));
        var modulus = (double)(input.Number("youngsModulusGpa") ?? 0) * 1e9;
        return new(density, thickness, new(modulus > 0 ? modulus : UsualYoungsModulusPa, (double)(input.Number("poissonRatio") ?? (decimal)UsualPoissonRatio), thickness));
    }

    /// <summary>Air of the moment from three readings, kg/m3; null when they are no room air.</summary>
    public static double? AirDensityOf(decimal? temperatureC, decimal? humidityPct, decimal? pressureHpa) =>
        temperatureC is >= -40 and <= 60 && humidityPct is >= 0 and <= 100 && pressureHpa is >= 300 and <= 1500
            ? AirDensity.KgPerM3((double)temperatureC.Value, (double)pressureHpa.Value * 100, (double)humidityPct.Value)
            : null;

    /// <summary>Coefficient of the co-moving air: the fixture's own when it was calibrated, else that of an uncalibrated fixture.</summary>
    public static double AirLoadOf(StageInput input) => (double)(input.Constant("airLoadCoefficient") ?? (decimal)AirLoad.UncalibratedFixture);

    /// <summary>Expanded uncertainty of the tension, k = 2, in percent; standard uncertainties from the route's numbers, in percent.</summary>
    public double ExpandedUncertaintyPct(StageInput input, double radiusM, double airDensity, double airLoad)
    {
        double Relative(string name, double usualPct) => (double)(input.Number(name) ?? (decimal)usualPct) / 100;
        var share = TensionUncertainty.AirShareOfMass(airLoad, AirLoad.MassRatio(airDensity, radiusM, ArealDensityKgPerM2));
        var calibrated = input.Instruments.Any(i => i.Constants.ContainsKey("airLoadCoefficient"));
        return 2 * 100 * TensionUncertainty.OfTensionInAir(share, new(
            Relative("resonanceUncertaintyPct", 0.1), Relative("radiusUncertaintyPct", 0.2), Relative("arealDensityUncertaintyPct", 1.5),
            Relative("airLoadUncertaintyPct", calibrated ? 2 : 12), Relative("airDensityUncertaintyPct", 0.2)));
    }

    /// <summary>What the builder should know of a tension: how near to yielding, and what room air does to it. Advice, never a verdict.</summary>
    public IEnumerable<StageFinding> Advice(StageInput input, double tensionNPerM)
    {
        if (input.Number("yieldStressMpa") is { } yieldMpa and > 0)
        {
            var share = MembraneTension.ShareOfYield(MembraneTension.StressPa(tensionNPerM, BaseThicknessM), (double)yieldMpa * 1e6);
            if (share >= WarnFromShareOfYield)
            {
                yield return new(Invariant($"the stress is {100 * share:0} % of the film's yield stress ({yieldMpa} MPa): it will creep"), false);
            }
        }

        var warmer = TensionShift.RelativeResonanceChange(tensionNPerM, TensionShift.ByTemperatureNPerM(Stiffness, 10, BrassPerK, FilmPerK));
        var damper = TensionShift.RelativeResonanceChange(tensionNPerM, TensionShift.ByHumidityNPerM(Stiffness, 10, SwellingPerPct));
        yield return new(Invariant($"for information: on a brass ring 10 K warmer would read {100 * (warmer ?? 0):+0.0;-0.0} %, 10 % more humidity {100 * (damper ?? 0):+0.0;-0.0} % (slow; constants from memory)"), false);
    }
}
