using Traceability.Domain.Certificates;

namespace Traceability.Documents.Tests.Certificates;

/// Invented units with invented people, models and numbers.
internal static class Examples
{
    public const string Notice = "Invented data: this unit, these people and these numbers do not exist.";

    private static readonly TimeSpan Workshop = TimeSpan.FromHours(1);

    public static DateTimeOffset At(int day, int hour, int minute = 0) => new(2026, 11, day, hour, minute, 0, Workshop);

    /// The least that can be issued: no parts, no values, no curve.
    public static CertificateDocument Bare { get; } =
        new()
        {
            CertificateId = "C-26-00001-7",
            Serial = "U-26-0001-4",
            Revision = 1,
            IssuedAt = At(20, 16, 5),
            VerifyAddress = "https://workshop.example/verify/C-26-00001-7",
            WorkshopName = "The Lower Mill Workshop",
            Identity = new("U-26-0001-4", "Heron S1", "microphone, single diaphragm", null, null, [], At(2, 8), At(20, 15, 40)),
            ReleasedBy = new("U-26-0001-4", "Final inspection and release", "Edda Quist", "quality lead", At(20, 15, 40)),
            Scope = "This certificate speaks only for what is listed in it.",
        };

    /// A single-sided unit: one film lot, a handful of values, one curve.
    public static CertificateDocument Short { get; } =
        Bare with
        {
            InventedDataNotice = Notice,
            Identity = Bare.Identity with { Routes = [new("unit", "heron-s1-unit", 2), new("capsule", "heron-s1-capsule", 3)] },
            Contents =
            [
                new(0, "capsule", "capsule, single", "K-26-0031-9", "Heron S1 capsule"),
                new(1, "diaphragm", "diaphragm", "D-26-0077-2", "Heron 6 µm"),
                new(2, "film", "film lot", "F-26-003-1", null, "Nordlicht Films (invented)", "NL-88120", Films[1]),
                new(0, "board set", "board set", "B-26-0040-6", "Audio board 4", "Panelwerk (invented)", "PW-26-11/0408"),
            ],
            Measurements =
            [
                new(
                    "K-26-0031-9",
                    "capsule",
                    "Capacitance",
                    At(10, 9, 12),
                    [new("Capacitance", "52.4", "pF", 48m, 58m, 53m, VerdictWords.Within)]
                ),
                new(
                    "K-26-0031-9",
                    "capsule",
                    "Insulation",
                    At(14, 11, 2),
                    [new("Resistance to body", "412", "GΩ", 100m, null, null, VerdictWords.Within)]
                ),
            ],
            Curves = [Curves.Cardioid("Response on axis")],
            Instruments = [new("I-07", "reference microphone", new(2026, 3, 2), new(2027, 3, 2), "CAL-26-0119")],
            BuiltBy = [new("K-26-0031-9", "Insulation", "Tove Marsh", "builder", At(14, 11, 2))],
            Statements = Definitions,
        };

    /// A dual-diaphragm unit with everything that a certificate can carry.
    public static CertificateDocument Full { get; } =
        Short with
        {
            CertificateId = "C-26-00417-2",
            Serial = "U-26-0417-K",
            Revision = 2,
            Supersedes = "C-26-00389-5",
            VerifyAddress = "https://workshop.example/verify/C-26-00417-2",
            Identity = new(
                "U-26-0417-K",
                "Heron D2",
                "microphone, dual diaphragm",
                "A",
                null,
                [
                    new("unit", "heron-d2-unit", 4),
                    new("capsule", "heron-d2-capsule", 6),
                    new("diaphragm", "heron-6um", 3),
                    new("board set", "board-4", 1),
                ],
                At(2, 8),
                At(20, 15, 40)
            ),
            Changes =
            [
                new("U-26-0417-K", At(18, 9, 10), "capsule taken out: K-26-0398-1", "crackles in humid air", "Tove Marsh", []),
                new("U-26-0417-K", At(19, 14, 20), "capsule fitted: K-26-0412-5", null, "Jiří Řezáč", []),
                new(
                    "U-26-0417-K",
                    At(20, 11, 15),
                    "Final acoustic test done again",
                    null,
                    "Tove Marsh",
                    [new("Sensitivity at 1 kHz, omnidirectional", "mV/Pa", "14.8", "15.1"), new("Stored value", "dB", null, "-0.20")]
                ),
            ],
            Contents =
            [
                new(0, "capsule", "capsule, dual", "K-26-0412-5", "Heron D2 capsule"),
                new(1, "diaphragm, front", "diaphragm", "D-26-0811-3", "Heron 6 µm"),
                new(2, "film", "film lot", Films[0].LotNumber, null, Films[0].Supplier, Films[0].SupplierLot, Films[0]),
                new(2, "bond", "adhesive lot", "A-26-014-8", null, "Haftgut (invented)", "HG 7741-B"),
                new(1, "diaphragm, rear", "diaphragm", "D-26-0812-1", "Heron 6 µm"),
                new(2, "film", "film lot", Films[0].LotNumber, null, Films[0].Supplier, Films[0].SupplierLot, Films[0]),
                new(2, "bond", "adhesive lot", "A-26-014-8", null, "Haftgut (invented)", "HG 7741-B"),
                new(1, "electrode, front", "electrode lot", "E-26-009-0", null, "own turning shop", "order 61"),
                new(1, "electrode, rear", "electrode lot", "E-26-009-0", null, "own turning shop", "order 61"),
                new(1, "spacers", "spacer lot", "P-26-022-6", null, "Ringwerk (invented)", "RW-40-26"),
                new(1, "resistive fabric", "fabric lot", "X-26-002-4", null, "Webstuhl (invented)", "roll 12"),
                new(0, "board set", "board set", "B-26-0440-7", "Audio and power board 4", "Panelwerk (invented)", "PW-26-11/0417"),
                new(0, "output connector", "connector lot", "N-26-005-2", null, "Steckhaus (invented)", "SH-2210"),
                new(0, "body and grille", "body lot", "M-26-007-9", null, "own turning shop", "order 58"),
            ],
            Measurements = Measured.DualCapsule,
            Patterns = Measured.Patterns,
            Curves =
            [
                Curves.Cardioid("Front, on axis: response inside the mask"),
                Curves.FrontAndRear("Front and rear sides, each on its own axis"),
                Curves.WithoutMask("Figure of eight, for information"),
            ],
            Soaks = [Soaks.WarmColdHumid("K-26-0412-5")],
            Instruments =
            [
                new("I-07", "reference microphone", new(2026, 3, 2), new(2027, 3, 2), "CAL-26-0119"),
                new("I-02", "resonance bench", new(2026, 5, 18), new(2027, 5, 18), "CAL-26-0171"),
                new("I-04", "capacitance bridge", new(2026, 6, 1), new(2027, 6, 1), "CAL-26-0188"),
                new("I-05", "insulation tester", new(2026, 6, 1), new(2027, 6, 1), "CAL-26-0189"),
                new("I-11", "climate logger", new(2026, 1, 20), new(2027, 1, 20), "CAL-26-0023"),
            ],
            BuiltBy =
            [
                new("D-26-0811-3", "Mount, tune and bond", "Tove Marsh", "builder", At(3, 10, 40)),
                new("D-26-0812-1", "Mount, tune and bond", "Tove Marsh", "builder", At(3, 12, 5)),
                new("K-26-0412-5", "Clean and stack", "Jiří Řezáč", "builder", At(9, 11, 30)),
                new("K-26-0412-5", "Insulation", "Jiří Řezáč", "builder", At(14, 11, 2)),
                new("K-26-0412-5", "Acoustic test of the capsule", "Tove Marsh", "builder", At(16, 9, 45)),
                new("U-26-0417-K", "Final assembly", "Jiří Řezáč", "builder", At(19, 14, 20)),
                new("U-26-0417-K", "Final acoustic test", "Tove Marsh", "builder", At(20, 11, 15)),
            ],
            ReleasedBy = new("U-26-0417-K", "Final inspection and release", "Edda Quist", "quality lead", At(20, 15, 40)),
            Nonconformities =
            [
                new(
                    "K-26-0412-5",
                    "Insulation",
                    At(12, 11, 8),
                    "Resistance front to body 62 GΩ, limit 100 GΩ: contamination on the insulating ring",
                    "rework",
                    "Cleaned with solvent and soaked again; second result stands in this certificate.",
                    "Edda Quist",
                    At(12, 13, 30)
                ),
                new(
                    "U-26-0417-K",
                    "Final assembly",
                    At(19, 15, 10),
                    "Hairline in the lacquer under the grille",
                    "concession",
                    "Hidden when assembled, no effect on function.",
                    "Edda Quist",
                    At(19, 16, 0),
                    "1.2 mm long; drawing allows 1.0 mm"
                ),
            ],
            Statements =
            [
                new("Principle", "Condenser, two diaphragms, pressure gradient; polarising voltage made from the supply."),
                new(
                    "Reference point and axis",
                    "Centre of the front diaphragm; perpendicular to it, outward from the side with the plate."
                ),
                new("Rated supply", "Phantom supply 48 V; current 3.1 mA."),
                new("Impedance", "Rated 150 Ω; minimum load 1000 Ω."),
                .. Definitions,
            ],
        };

    private static IReadOnlyList<Statement> Definitions =>
        [
            new(
                "Equivalent noise",
                "A-weighted sound pressure level that would give the same output as the microphone's own noise, relative to 20 µPa."
            ),
            new("Verdict", "A value on a limit is within."),
        ];

    private static IReadOnlyList<FilmData> Films =>
        [
            new("F-26-002-9", "Nordlicht Films (invented)", "NL-88041", 6.0m, 42m, 0.85m),
            new("F-26-003-1", "Nordlicht Films (invented)", "NL-88120", 6.0m, 40m, null),
        ];
}
