using Traceability.Domain.Records;
using Traceability.Domain.Routes;

namespace Traceability.Domain.Tests.Gates.Vocabulary;

/// <summary>Routes of the tests: plain stages, to which each test adds what it is about.</summary>
internal static class ARoute
{
    public const string Model = "M-1";
    public const string ChildKind = PartKinds.Diaphragm;

    public static Route Of(params Stage[] stages) =>
        new(Model, PartKinds.Capsule, 1, "Capsule", "C", "the workshop lead", "the quality lead", new(2026, 1, 1), stages, "", "");

    /// <summary>Three stages without any further condition.</summary>
    public static Route Plain => Of(Stage("mount"), Stage("tune"), Stage("trim"));

    public static Stage Stage(string code) => new(code, $"{char.ToUpperInvariant(code[0])}{code[1..]}", "entered-limits");

    public static Stage Measuring(this Stage stage, string characteristic, decimal? lower, decimal? upper) =>
        stage with
        {
            Characteristics = [.. stage.Characteristics, new(characteristic, characteristic, "Hz", null, lower, upper, null, true, false)],
        };

    public static Stage Computing(this Stage stage, string characteristic, string unit) =>
        stage with
        {
            Characteristics = [.. stage.Characteristics, new(characteristic, characteristic, unit, null, null, null, null, false, false)],
        };

    /// <summary>A stage that computes: front and rear in pF, and their asymmetry of at most 5 %.</summary>
    public static Stage Capacitance(string code = "capacitance") =>
        Stage(code) with
        {
            Method = "capacitance",
            Characteristics =
            [
                new("capacitanceFrontPf", "Front", "pF", null, null, null, null, true, false),
                new("capacitanceRearPf", "Rear", "pF", null, null, null, null, true, false),
                new("asymmetryPct", "Asymmetry", "pct", null, null, 5m, null, false, false),
            ],
        };

    public static Stage Taking(this Stage stage, string position, string? lotKind = null, string? partKind = null, bool required = true) =>
        stage with
        {
            Slots = [.. stage.Slots, new(position, position, lotKind, partKind, required)],
        };
}
