using System.Globalization;
using Traceability.Domain.Certificates;

namespace Traceability.Documents.Tests.Certificates;

/// Units that strain the layout: long names, deep trees, hundreds of values, letters from other scripts.
internal static class HardExamples
{
    private static readonly Statement Letters = new("Letters", "Ř Ω µ ſ Ж ψ ≤ ≥ ± ° … – “ ” € Ł ő ş ğ İ");

    public const string LongSerial = "U-26-0417-EXTRAORDINARILY-LONG-SERIAL-THAT-SOMEBODY-ENGRAVED-ANYWAY-K";
    public const string LongLot = "F-26-002-9-WITH-A-SUPPLIER-NUMBER-KEPT-WHOLE/2026.11.03/ROLL-000012345/SHEET-7";
    public const string Unbroken = "Donaudampfschifffahrtsmikrofonkapselmembranspannvorrichtungsprüfprotokollnummernverzeichnis";

    public static CertificateDocument LongNames { get; } =
        Examples.Full with
        {
            Serial = LongSerial,
            WorkshopName =
                "The Extraordinarily Long-Named Workshop for Hand-Built Studio Microphones at the Lower Mill, Third Yard on the Left",
            Identity = Examples.Full.Identity with
            {
                Serial = LongSerial,
                Model = "Heron D2 Jubilee Edition in Brushed Champagne with Companion Case",
                Grade = "B",
                RegradeNote =
                    "Regraded from A after the lacquer of the body was found uneven; no effect on any measured value. " + Unbroken,
            },
            Contents =
            [
                .. Examples.Full.Contents.Select(row =>
                    row.Film is { } film
                        ? row with
                        {
                            Identifier = LongLot,
                            Film = film with { LotNumber = LongLot, Supplier = "Folien-Gesellschaft Überwald & Töchter (invented)" },
                        }
                        : row
                ),
                .. Enumerable
                    .Range(1, 9)
                    .Select(depth => new ContentRow(depth, $"nested {depth}", "part", $"Z-26-{depth:0000}-0", Unbroken)),
            ],
            BuiltBy =
            [
                .. Examples.Full.BuiltBy.Select(deed =>
                    deed with
                    {
                        Name = "Bartholomäa-Philippine Řezáčová-Œuvrard von und zu Hohenmühle",
                        Role = "builder in training",
                    }
                ),
            ],
            Nonconformities =
            [
                .. Examples.Full.Nonconformities.Select(found =>
                    found with
                    {
                        Reason = string.Join(' ', Enumerable.Repeat(found.Reason, 6)),
                    }
                ),
            ],
            Statements = [.. Examples.Full.Statements, Letters],
        };

    public static CertificateDocument ManyRows(int rows) =>
        Examples.Full with
        {
            Measurements =
            [
                .. Enumerable
                    .Range(0, rows)
                    .Chunk(40)
                    .Select(
                        (chunk, stage) =>
                            new MeasuredStage(
                                $"K-26-{stage:0000}-1",
                                "capsule",
                                $"Stage {stage + 1} of the endurance run",
                                Examples.At(10, 9, stage),
                                [
                                    .. chunk.Select(i => new MeasuredValue(
                                        $"Characteristic {i:000}",
                                        Digits(i),
                                        "GΩ",
                                        1m,
                                        9m,
                                        5.50m,
                                        VerdictWords.Within,
                                        "± 0.02 GΩ (k = 2)",
                                        i % 25 == 3 ? $"Corrected, was {i}.999" : null
                                    )),
                                ]
                            )
                    ),
            ],
        };

    /// A value that no other text on the certificate resembles.
    public static string Digits(int row) => (4 + row / 100_000m).ToString("0.00000", CultureInfo.InvariantCulture);
}
