using Traceability.Domain.Routes;
using Traceability.Domain.Stages.FilmLot;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.Diaphragm;

/// <summary>
/// What is known of the film on the bench: its layers from the film lot that is fitted (or else from the route), its stiffness, and the
/// fixture that holds it.
/// </summary>
internal sealed record TunedFilm(double ArealDensityKgPerM2, double BaseThicknessM, FilmStiffness Stiffness)
{
    /// <summary>The numbers that a route states about jig, ring, film and fixture.</summary>
    public static readonly IReadOnlyList<MethodParameter> Parameters =
    [
        new("jigRadiusMm", "mm", "Radius of the free film in the jig.") { Required = true },
        new("ringRadiusMm", "mm", "Inner radius of the ring.") { Required = true },
        new("baseThicknessUm", "µm", "Thickness of the base film, when the fitted film lot does not say."),
        new("metalThicknessNm", "nm", "Thickness of the metal, when the fitted film lot does not say."),
        new("baseDensityKgM3", "kg/m³", "Density of the base film; 1390 (PET) when not stated."),
        new("metalDensityKgM3", "kg/m³", "Density of the metal; 19 300 (gold) when not stated."),
        new("youngsModulusGpa", "GPa", "Young's modulus of the film; 4.5 (PET) when not stated."),
        new("poissonRatio", "", "Poisson's ratio of the film; 0.38 (PET) when not stated.") { Upper = 0.5m },
        new("yieldStressMpa", "MPa", "Yield stress of the film; with it, a stress of half of it and more is pointed out."),
        new(
            "airLoadCoefficient",
            "",
            "Coefficient of the air that moves along; from the bench's calibration, else this, else that of an" + " uncalibrated fixture."
        ),
        new("resonanceUncertaintyPct", "%", "Standard uncertainty of the resonance; 0.1 when not stated."),
        new("radiusUncertaintyPct", "%", "Standard uncertainty of the radius; 0.2 when not stated."),
        new("arealDensityUncertaintyPct", "%", "Standard uncertainty of the mass per area; 1.5 when not stated."),
        new("airLoadUncertaintyPct", "%", "Standard uncertainty of the coefficient of the air; 2 when calibrated, else 12."),
        new("airDensityUncertaintyPct", "%", "Standard uncertainty of the density of the air; 0.2 when not stated."),
    ];

    /// <summary>Where its formulas come from.</summary>
    public static readonly IReadOnlyList<string> Sources =
    [
        "Membrane equation of the circular membrane with co-moving air.",
        "Material constants of PET and gold: from memory.",
        "Uncertainty: root of the sum of squares (GUM), k = 2.",
    ];

    /// <summary>BOPET, from memory.</summary>
    private const double UsualYoungsModulusPa = 4.5e9;

    /// <summary>BOPET, from memory.</summary>
    private const double UsualPoissonRatio = 0.38;

    /// <summary>Brass ring and BOPET, 1/K, from memory.</summary>
    private const double BrassPerK = 19e-6,
        FilmPerK = 17e-6;

    /// <summary>BOPET, strain per % RH, from memory and doubtful within a factor of two.</summary>
    private const double SwellingPerPct = 6e-6;

    /// <summary>Common practice, no source.</summary>
    private const double WarnFromShareOfYield = 0.5;

    /// <summary>Below this, in percent, room air is not worth a word. Common practice, no source.</summary>
    private const double WorthSayingPct = 0.5;

    /// <summary>What is wrong with the numbers of a route beyond their sign.</summary>
    public static IEnumerable<string> ProblemsWith(Stage stage) =>
        stage.Parameters.Numbers.TryGetValue("poissonRatio", out var ratio) && ratio > 0.5m ? [TensionTexts.PoissonRatioIsAtMost] : [];

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
            new FilmLayer((double)metalNm * 1e-9, (double)(input.Number("metalDensityKgM3") ?? (decimal)FilmMaterials.GoldKgPerM3))
        );
        var modulus = (double?)input.Number("youngsModulusGpa") * 1e9 ?? UsualYoungsModulusPa;
        return new(density, thickness, new(modulus, (double)(input.Number("poissonRatio") ?? (decimal)UsualPoissonRatio), thickness));
    }

    /// <summary>Air of the moment from three readings, kg/m3; null when they are no room air.</summary>
    public static double? AirDensityOf(decimal? temperatureC, decimal? humidityPct, decimal? pressureHpa) =>
        temperatureC is >= -40 and <= 60 && humidityPct is >= 0 and <= 100 && pressureHpa is >= 300 and <= 1500
            ? AirDensity.KgPerM3((double)temperatureC.Value, (double)pressureHpa.Value * 100, (double)humidityPct.Value)
            : null;

    /// <summary>Coefficient of the co-moving air: the fixture's own when it was calibrated, else that of an uncalibrated fixture.</summary>
    public static double AirLoadOf(StageInput input) =>
        (double)(input.Constant("airLoadCoefficient") ?? (decimal)AirLoad.UncalibratedFixture);

    /// <summary>
    /// Expanded uncertainty of the tension, k = 2, in percent; standard uncertainties from the route's numbers, in percent.
    /// </summary>
    public double ExpandedUncertaintyPct(StageInput input, double radiusM, double airDensity, double airLoad)
    {
        double Relative(string name, double usualPct) => (double)(input.Number(name) ?? (decimal)usualPct) / 100;
        var share = TensionUncertainty.AirShareOfMass(airLoad, AirLoad.MassRatio(airDensity, radiusM, ArealDensityKgPerM2));
        var calibrated = input.Constant("airLoadCoefficient") is not null;
        return 2
            * 100
            * TensionUncertainty.OfTensionInAir(
                share,
                new(
                    Relative("resonanceUncertaintyPct", 0.1),
                    Relative("radiusUncertaintyPct", 0.2),
                    Relative("arealDensityUncertaintyPct", 1.5),
                    Relative("airLoadUncertaintyPct", calibrated ? 2 : 12),
                    Relative("airDensityUncertaintyPct", 0.2)
                )
            );
    }

    /// <summary>Equi-biaxial strain under a tension, in percent.</summary>
    public double StrainPct(double tensionNPerM) =>
        100 * MembraneTension.Strain(tensionNPerM, BaseThicknessM, Stiffness.YoungsModulusPa, Stiffness.PoissonRatio);

    /// <summary>How near to yielding the film is, when it is near. Advice, never a verdict.</summary>
    public IEnumerable<StageFinding> NearYield(StageInput input, double tensionNPerM)
    {
        if (input.Number("yieldStressMpa") is { } yieldMpa and > 0)
        {
            var share = MembraneTension.ShareOfYield(MembraneTension.StressPa(tensionNPerM, BaseThicknessM), (double)yieldMpa * 1e6);
            if (share >= WarnFromShareOfYield)
            {
                yield return new(TensionTexts.StressIsNearTheYieldStress(100 * share, yieldMpa), false);
            }
        }
    }

    /// <summary>What room air will do to this tension once the film is on its ring. Advice, never a verdict.</summary>
    public StageFinding InOtherAir(double tensionNPerM) =>
        new(TensionTexts.ShiftOnTheRing(ShiftPct(tensionNPerM, 10, 0), ShiftPct(tensionNPerM, 0, 10)), false);

    /// <summary>What the change of the air since the tuning does by itself, when that is worth a word. Advice, never a verdict.</summary>
    public IEnumerable<StageFinding> SinceTuning(double tensionNPerM, double warmerK, double damperPct)
    {
        var shift = ShiftPct(tensionNPerM, warmerK, damperPct);
        if (Math.Abs(shift) >= WorthSayingPct)
        {
            yield return new(TensionTexts.ShiftSinceTheTuning(warmerK, damperPct, shift), false);
        }
    }

    /// <summary>Relative change of the resonance, in percent; -100 when the film would go slack.</summary>
    private double ShiftPct(double tensionNPerM, double warmerK, double damperPct) =>
        100
        * (
            TensionShift.RelativeResonanceChange(
                tensionNPerM,
                TensionShift.ByTemperatureNPerM(Stiffness, warmerK, BrassPerK, FilmPerK)
                    + TensionShift.ByHumidityNPerM(Stiffness, damperPct, SwellingPerPct)
            ) ?? -1
        );
}
