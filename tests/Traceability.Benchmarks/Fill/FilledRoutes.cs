using System.Globalization;
using System.Text;
using Traceability.Domain.Records;

namespace Traceability.Benchmarks;

/// <summary>One measured value of a stage, with limits on both sides of what is aimed at.</summary>
internal sealed record FilledCharacteristic(string Name, string Unit, decimal Nominal, decimal Tolerance);

/// <summary>A place at a stage, for a lot of a kind or a part of a kind.</summary>
internal sealed record FilledSlot(string Position, string? LotKind = null, string? PartKind = null);

/// <summary>A stage: how often it fails when nothing is the matter, what is fitted, what is measured.</summary>
internal sealed record FilledStage(string Code, double Failures, FilledSlot[] Slots, FilledCharacteristic[] Characteristics);

/// <summary>
/// The invented model that fills a database: four kinds of part, fifteen stages, four readings each. All limits are invented.
/// </summary>
internal static class FilledRoutes
{
    public const string Model = "BECK-1";

    public static readonly IReadOnlyDictionary<string, FilledStage[]> Stages = new Dictionary<string, FilledStage[]>
    {
        [PartKinds.Diaphragm] =
        [
            new(
                "mount",
                0.005,
                [new("film", LotKind: Lot.FilmKind)],
                [.. Room("mount"), new("mountMarkMm", "mm", 0, 0.5m), new("mountFoldsCount", "count", 0, 0.5m)]
            ),
            new("fine-tune", 0.03, [], [new("jigResonanceHz", "Hz", 1100, 12), .. Room("tune"), new("jigSpreadHz", "Hz", 0, 6)]),
            new(
                "ring-bond",
                0.01,
                [new("ring", LotKind: "diaphragm-ring"), new("adhesive", LotKind: "adhesive")],
                [new("minutesSinceMixing", "min", 20, 20), new("adhesiveMassMg", "mg", 12, 4), .. Room("bond")]
            ),
            new(
                "release-trim",
                0.005,
                [],
                [new("overhangMm", "mm", 0.15m, 0.15m), new("trimFaultsCount", "count", 0, 0.5m), .. Room("trim")]
            ),
            new("ring-resonance", 0.06, [], [new("ringResonanceHz", "Hz", 1158, 30), .. Room("ring"), new("ringSpreadHz", "Hz", 0, 8)]),
        ],
        [PartKinds.Capsule] =
        [
            new(
                "clean-stack",
                0.005,
                [new("front", PartKind: PartKinds.Diaphragm)],
                [.. Room("stack"), new("dustCount", "count", 0, 2), new("gapUm", "um", 40, 4)]
            ),
            new("capacitance", 0.02, [], [new("frontCapacitancePf", "pF", 62, 5), new("strayPf", "pF", 4, 2), .. Room("capacitance")]),
            new(
                "soak-humid",
                0.02,
                [],
                [
                    new("soakTemperatureC", "degC", 30, 2),
                    new("soakHumidityPct", "pct", 85, 5),
                    new("soakMinutes", "min", 500, 20),
                    new("dropsCount", "count", 0, 0.5m),
                ]
            ),
            new("insulation", 0.04, [], [new("insulationGohm", "GOhm", 600, 500), new("testVoltageV", "V", 60, 1), .. Room("insulation")]),
            new(
                "acoustic",
                0.03,
                [],
                [
                    new("sensitivityDb", "dB", -34, 1.5m),
                    new("marginDb", "dB", 1, 1),
                    new("noiseDb", "dB", 12, 3),
                    new("cracklesCount", "count", 0, 0.5m),
                ]
            ),
        ],
        [PartKinds.BoardSet] =
        [
            new(
                "incoming-check",
                0.02,
                [new("panel", LotKind: "board-panel")],
                [
                    new("supplyCurrentMa", "mA", 3.2m, 0.7m),
                    new("polarisingVoltageV", "V", 60, 1),
                    new("boardGainDb", "dB", -1.5m, 0.5m),
                    new("boardNoiseUv", "uV", 1.2m, 1.2m),
                ]
            ),
        ],
        [PartKinds.Unit] =
        [
            new(
                "wiring",
                0.01,
                [new("boards", PartKind: PartKinds.BoardSet), new("body", LotKind: "body")],
                [new("jointsCount", "count", 14, 0.5m), new("wireLengthMm", "mm", 80, 10), .. Room("wiring")]
            ),
            new(
                "capsule-in",
                0.01,
                [new("capsule", PartKind: PartKinds.Capsule)],
                [new("tiltDeg", "deg", 0, 2), new("screwsCount", "count", 3, 0.5m), .. Room("capsuleIn")]
            ),
            new(
                "final-acoustic",
                0.03,
                [],
                [
                    new("unitSensitivityDb", "dB", -35, 1.5m),
                    new("unitMarginDb", "dB", 1, 1),
                    new("unitNoiseDb", "dB", 14, 3),
                    new("unitCracklesCount", "count", 0, 0.5m),
                ]
            ),
            new(
                "final-inspection",
                0.005,
                [],
                [new("scratchesCount", "count", 0, 0.5m), new("labelFaultsCount", "count", 0, 0.5m), .. Room("final")]
            ),
        ],
    };

    /// <summary>The route of a kind as a file.</summary>
    public static string Text(string kind)
    {
        var text = new StringBuilder().Append(
            CultureInfo.InvariantCulture,
            $"""
            # Invented to fill a database for measuring; none of it belongs to a real workshop.
            model: {Model}
            kind: {kind}
            revision: 1
            title: {kind} of the filled workshop
            serialPrefix: {kind[..1].ToUpperInvariant()}
            author: LEAD1
            approvedBy: QUAL1
            effectiveFrom: 2010-01-04
            stages:

            """
        );
        foreach (var stage in Stages[kind])
        {
            text.Append(CultureInfo.InvariantCulture, $"  - code: {stage.Code}\n    title: {stage.Code}\n    method: entered-limits\n");
            text.Append(stage.Slots.Length == 0 ? "" : "    slots:\n");
            foreach (var slot in stage.Slots)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"      - {{position: {slot.Position}, label: {slot.Position},"
                        + $" {(slot.LotKind is null ? $"partKind: {slot.PartKind}" : $"lotKind: {slot.LotKind}")}}}\n"
                );
            }

            text.Append("    characteristics:\n");
            foreach (var c in stage.Characteristics)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"      - {{name: {c.Name}, label: {c.Name}, unit: {c.Unit}, nominal: {c.Nominal}, lower:"
                        + $" {c.Nominal - c.Tolerance}, upper: {c.Nominal + c.Tolerance}}}\n"
                );
            }
        }

        return text.ToString();
    }

    private static FilledCharacteristic[] Room(string at) =>
        [new($"{at}TemperatureC", "degC", 22, 4), new($"{at}HumidityPct", "pct", 45, 15)];
}
