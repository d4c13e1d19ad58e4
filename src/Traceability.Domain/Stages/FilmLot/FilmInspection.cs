using Traceability.Domain.Routes;

namespace Traceability.Domain.Stages.FilmLot;

/// <summary>
/// Incoming inspection of a film lot: mass per area from the layers, checked by weighing a punched disc, and whether the sheet resistance fits
/// the stated metal.
/// </summary>
/// <remarks>
/// Entered: <c>baseThicknessUm</c>, <c>metalThicknessNm</c>; where there is one, <c>sheetResistanceOhm</c> and <c>discMassMg</c>. Route numbers, each with a
/// usual value: <c>baseDensityKgM3</c> (PET), <c>metalDensityKgM3</c> and <c>metalResistivityNanoohmM</c> (gold), <c>discDiameterMm</c>. Sources and checks:
/// <see cref="ArealDensity"/>, <see cref="SheetResistance"/>, published values A3; <c>FilmInspectionTests</c>.
/// </remarks>
public sealed class FilmInspection : StageMethod
{
    private const string Base = "baseThicknessUm";
    private const string Metal = "metalThicknessNm";
    private const string FromLayers = "arealDensityGm2";
    private const string Weighed = "weighedArealDensityGm2";
    private const string Departure = "weighingDeparturePct";
    private const double GramsPerKg = 1000;

    /// <inheritdoc/>
    public override string Name => "film-inspection";

    /// <inheritdoc/>
    public override int Version => 1;

    /// <inheritdoc/>
    public override IEnumerable<string> ProblemsWith(Stage stage) =>
    [
        .. NeedsEntered(stage, Base, Metal), .. NeedsComputed(stage, FromLayers), .. ComputesNoOther(stage),
        .. stage.Characteristic("discMassMg") is null ? [] : NeedsNumbers(stage, "discDiameterMm"),
    ];

    /// <inheritdoc/>
    public override string? HowComputed(string characteristic) => characteristic switch
    {
        FromLayers => "thickness x density of the base film and of the metal, added; PET 1390 and gold 19 300 kg/m³ unless the route says otherwise (bulk values, CRC Handbook, from memory).",
        Weighed => "mass of a punched disc over its area, pi d²/4, d the punch's diameter (route number discDiameterMm).",
        Departure => "weighed over computed less one, in percent: a lot that is heavier or lighter than its certificate says.",
        _ => null,
    };

    /// <inheritdoc/>
    public override StageOutcome Judge(StageInput input)
    {
        if (input.Entered[Base] <= 0 || input.Entered[Metal] < 0 || input.Value("discMassMg") <= 0 || input.Value("sheetResistanceOhm") <= 0)
        {
            return StageOutcome.CannotJudge("A film has a thickness, a weighed disc a mass and a metal a resistance above zero.");
        }

        var metal = new FilmLayer((double)input.Entered[Metal] * 1e-9, (double)(input.Number("metalDensityKgM3") ?? (decimal)FilmMaterials.GoldKgPerM3));
        var computed = ArealDensity.FromLayers(new((double)input.Entered[Base] * 1e-6, (double)(input.Number("baseDensityKgM3") ?? (decimal)FilmMaterials.PetKgPerM3)), metal);
        double? weighed = input.Value("discMassMg") is { } mass && input.Number("discDiameterMm") is { } diameter ? ArealDensity.FromPunchedDisc((double)mass * 1e-6, (double)diameter * 1e-3) : null;
        return new(
            Wanted(
                input.Stage, ComputedValue.Of(FromLayers, computed * GramsPerKg, 3), ComputedValue.Of(Weighed, weighed * GramsPerKg, 3),
                ComputedValue.Of(Departure, weighed is { } w ? 100 * ArealDensity.RelativeDeparture(w, computed) : null, 2)),
            Plausibility(input, metal.ThicknessM));
    }

    private static StageFinding[] Plausibility(StageInput input, double metalM)
    {
        if (input.Value("sheetResistanceOhm") is not { } measured || metalM <= 0)
        {
            return [];
        }

        var resistivity = (double)(input.Number("metalResistivityNanoohmM") ?? (decimal)(FilmMaterials.GoldOhmM * 1e9)) * 1e-9;
        return SheetResistance.Judge((double)measured, resistivity, metalM) switch
        {
            SheetResistancePlausibility.LayerThickerThanStated => [new("the sheet resistance is lower than bulk metal of the stated thickness can give: the layer is thicker than stated, or the reading is wrong", false)],
            SheetResistancePlausibility.LayerThinnerOrBroken => [new("the sheet resistance is far above that of the stated thickness: the layer is thinner than stated, broken up or scratched", false)],
            _ => [],
        };
    }
}
