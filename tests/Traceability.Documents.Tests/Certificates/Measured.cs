using Traceability.Domain.Certificates;
using static Traceability.Documents.Tests.Certificates.Examples;

namespace Traceability.Documents.Tests.Certificates;

internal static class Measured
{
    public static IReadOnlyList<MeasuredStage> DualCapsule { get; } =
    [
        Diaphragm("D-26-0811-3", "1 184", "1171.5", "-1.06"),
        Diaphragm("D-26-0812-1", "1 179", "1168.0", "-0.93"),
        new(
            "K-26-0412-5",
            "capsule",
            "Capacitance",
            At(9, 15, 20),
            [
                new("Capacitance, front", "61.30", "pF", 57m, 65m, 61m, VerdictWords.Within, "± 0.15 pF (k = 2)"),
                new(
                    "Capacitance, rear",
                    "60.85",
                    "pF",
                    57m,
                    65m,
                    61m,
                    VerdictWords.Within,
                    "± 0.15 pF (k = 2)",
                    "Corrected by Jiří Řezáč, 9 Nov 2026, 15:31: was 68.05, digits swapped while typing."
                ),
                new("Difference front to rear", "0.45", "pF", null, 1.5m, null, VerdictWords.Within),
            ]
        ),
        new(
            "K-26-0412-5",
            "capsule",
            "Insulation, 31 min after the humid phase",
            At(14, 11, 2),
            [
                new("Resistance, front to body", "318", "GΩ", 100m, null, null, VerdictWords.Within),
                new("Resistance, rear to body", "356", "GΩ", 100m, null, null, VerdictWords.Within),
                new("Resistance, front to rear", "742", "GΩ", 200m, null, null, VerdictWords.Within),
                new("Ratio 60 s to 15 s", "1.34", null, 1.1m, null, null, VerdictWords.Within),
            ]
        ),
        new(
            "K-26-0412-5",
            "capsule",
            "Acoustic test of the capsule",
            At(16, 9, 45),
            [
                new("Crackles in 60 s", "0", null, null, 0m, null, VerdictWords.Within),
                new("Front/rear match, 200 Hz to 5 kHz", "0.62", "dB", null, 1.5m, null, VerdictWords.Within, "± 0.30 dB (k = 2)"),
            ]
        ),
        new(
            "U-26-0417-K",
            "unit",
            "Functional check",
            At(19, 16, 30),
            [
                new("Supply current", "3.08", "mA", 2.6m, 3.6m, 3.1m, VerdictWords.Within),
                new("Polarising voltage", "61.8", "V", 60m, 64m, 62m, VerdictWords.Within),
                new("Every switch position", "yes", null, null, null, null, VerdictWords.Within),
            ]
        ),
    ];

    public static IReadOnlyList<PatternResult> Patterns { get; } =
    [
        Pattern("omnidirectional", "15.1", "-36.4", "10.2", null),
        Pattern("cardioid", "18.7", "-34.6", "8.4", "22.9"),
        Pattern("figure of eight", "16.0", "-35.9", "9.6", "0.4"),
    ];

    private static MeasuredStage Diaphragm(string serial, string tuned, string onRing, string drift) =>
        new(
            serial,
            "diaphragm",
            "Resonance on the ring",
            At(5, 9, 30),
            [
                new("Resonance when tuned", tuned.Replace(" ", ""), "Hz", 1150m, 1210m, 1180m, VerdictWords.Within, "± 2.4 Hz (k = 2)"),
                new("Resonance on the ring", onRing, "Hz", 1140m, 1210m, 1175m, VerdictWords.Within, "± 2.4 Hz (k = 2)"),
                new("Drift since tuning", drift, "%", -2.5m, 2.5m, 0m, VerdictWords.Within),
            ]
        );

    private static PatternResult Pattern(string name, string sensitivity, string level, string noise, string? frontToBack) =>
        new(
            name,
            [
                new("Sensitivity", sensitivity, "mV/Pa", 14m, 21m, null, VerdictWords.Within, "± 0.35 dB (k = 2)"),
                new("Level", level, "dB re 1 V/Pa", null, null, null, VerdictWords.ForInformation),
                new("Equivalent noise", noise, "dB(A)", null, 12m, null, VerdictWords.Within),
                .. frontToBack is null
                    ? (MeasuredValue[])[]
                    : [new("Front to back", frontToBack, "dB", null, null, null, VerdictWords.ForInformation)],
            ]
        );
}
