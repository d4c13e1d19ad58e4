using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.FilmLot;

/// <summary>
/// Incoming inspection of a film lot: mass per area from the layers, checked by weighing a punched disc, and whether the sheet resistance
/// fits the stated metal.
/// </summary>
/// <remarks>
/// Entered: <c>baseThicknessUm</c>, <c>metalThicknessNm</c>; where there is one, <c>sheetResistanceOhm</c> and <c>discMassMg</c>. Route
/// numbers, each with a usual value: <c>baseDensityKgM3</c> (PET), <c>metalDensityKgM3</c> and <c>metalResistivityNanoohmM</c> (gold),
/// <c>discDiameterMm</c>. Sources and checks: <see cref="ArealDensity"/>, <see cref="SheetResistance"/>, published values A3;
/// <c>FilmInspectionTests</c>.
/// </remarks>
public sealed class FilmInspection : StageMethod
{
    private const string Base = "baseThicknessUm";
    private const string Metal = "metalThicknessNm";
    private const string FromLayers = "arealDensityGm2";
    private const string Weighed = "weighedArealDensityGm2";
    private const string Departure = "weighingDeparturePct";
    private const string SheetResistanceOhm = "sheetResistanceOhm";
    private const string OverBulk = "sheetResistanceOverBulk";
    private const string DiscMass = "discMassMg";
    private const double GramsPerKg = 1000;

    /// <inheritdoc/>
    public override string Name => "film-inspection";

    /// <inheritdoc/>
    public override int Version => 2;

    /// <inheritdoc/>
    public override MethodDescription Description { get; } =
        new(
            "Incoming inspection of a film lot: mass per area from its layers, checked by weighing a punched disc, and whether the sheet"
                + " resistance fits the stated metal.",
            [Base, Metal, SheetResistanceOhm, DiscMass],
            2,
            [new(FromLayers, "g/m2") { Required = true }, new(Weighed, "g/m2"), new(Departure, "pct"), new(OverBulk, "ratio")],
            [],
            [
                "Bulk density and resistivity: CRC Handbook, from memory.",
                "Thin metal layers: theory of Fuchs and Sondheimer; the band of 1 to 4 is common practice, no source.",
                "Mass per area: definition.",
            ]
        );

    /// <inheritdoc/>
    public override IReadOnlyList<MethodParameter> Parameters { get; } =
    [
        new("baseDensityKgM3", "kg/m³", "Density of the base film; 1390 (PET) when not stated."),
        new("metalDensityKgM3", "kg/m³", "Density of the metal; 19 300 (gold) when not stated."),
        new("metalResistivityNanoohmM", "nΩ m", "Resistivity of the bulk metal; 22.14 (gold) when not stated."),
        new("discDiameterMm", "mm", "Diameter of the punch; needed when a disc is weighed (discMassMg)."),
    ];

    /// <inheritdoc/>
    public override IEnumerable<string> ProblemsWith(Stage stage) =>
        [
            .. NeedsEntered(stage, Base, Metal),
            .. NeedsComputed(stage, FromLayers),
            .. ComputesNoOther(stage),
            .. stage.Characteristic(DiscMass) is null ? [] : NeedsNumbers(stage, "discDiameterMm"),
        ];

    /// <inheritdoc/>
    public override string? HowComputed(string characteristic) =>
        characteristic switch
        {
            FromLayers =>
                "thickness x density of the base film and of the metal, added; PET 1390 and gold 19 300 kg/m³ unless the route says"
                    + " otherwise (bulk values, CRC Handbook, from memory).",
            Weighed => "mass of a punched disc over its area, pi d²/4, d the punch's diameter (route number discDiameterMm). Source:"
                + " definition of mass per area.",
            Departure =>
                "weighed over computed less one, in percent: a lot that is heavier or lighter than its certificate says. The workshop's"
                    + " own definition.",
            OverBulk =>
                "measured sheet resistance over that of bulk metal of the stated thickness, rho/t (gold 22.14 nOhm m unless the route"
                    + " says otherwise). Thin sputtered layers give 1 to 4 (common practice, no source; theory of Fuchs and Sondheimer).",
            _ => null,
        };

    /// <inheritdoc/>
    protected override StageOutcome Compute(StageInput input)
    {
        if (Impossible(input) is { } why)
        {
            return StageOutcome.CannotJudge(why);
        }

        var metal = new FilmLayer(
            (double)input.Entered[Metal] * 1e-9,
            (double)(input.Number("metalDensityKgM3") ?? (decimal)FilmMaterials.GoldKgPerM3)
        );
        var computed = ArealDensity.FromLayers(
            new((double)input.Entered[Base] * 1e-6, (double)(input.Number("baseDensityKgM3") ?? (decimal)FilmMaterials.PetKgPerM3)),
            metal
        );
        double? weighed =
            input.Value(DiscMass) is { } mass && input.Number("discDiameterMm") is { } diameter
                ? ArealDensity.FromPunchedDisc((double)mass * 1e-6, (double)diameter * 1e-3)
                : null;
        var resistivity = (double?)input.Number("metalResistivityNanoohmM") * 1e-9 ?? FilmMaterials.GoldOhmM;
        var measured = metal.ThicknessM > 0 ? (double?)input.Value(SheetResistanceOhm) : null;
        return Outcome(
            input.Stage,
            [
                ComputedValue.Of(FromLayers, computed * GramsPerKg, 3),
                ComputedValue.Of(Weighed, weighed * GramsPerKg, 3),
                ComputedValue.Of(Departure, weighed is { } w ? 100 * ArealDensity.RelativeDeparture(w, computed) : null, 2),
                ComputedValue.Of(
                    OverBulk,
                    measured is { } r ? r / SheetResistance.BulkOhmPerSquare(resistivity, metal.ThicknessM) : null,
                    2
                ),
            ],
            measured is { } ohm ? Plausibility(SheetResistance.Judge(ohm, resistivity, metal.ThicknessM)) : []
        );
    }

    private static string? Impossible(StageInput input) =>
        (input.Entered[Base], input.Entered[Metal], input.Value(DiscMass), input.Value(SheetResistanceOhm)) switch
        {
            (<= 0, _, _, _) => FilmTexts.BaseFilmCannotBe(input.Entered[Base]),
            (_, < 0, _, _) => FilmTexts.MetalCannotBe(input.Entered[Metal]),
            (_, _, <= 0, _) => FilmTexts.DiscCannotBe(input.Value(DiscMass)),
            (_, _, _, <= 0) => FilmTexts.SheetResistanceCannotBe(input.Value(SheetResistanceOhm)),
            _ => null,
        };

    private static StageFinding[] Plausibility(SheetResistancePlausibility verdict) =>
        verdict switch
        {
            SheetResistancePlausibility.LayerThickerThanStated => [new(FilmTexts.LayerIsThicker, false)],
            SheetResistancePlausibility.LayerThinnerOrBroken => [new(FilmTexts.LayerIsThinner, false)],
            _ => [],
        };
}
