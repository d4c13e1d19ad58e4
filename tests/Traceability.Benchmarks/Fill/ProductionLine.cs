using System.Globalization;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Benchmarks;

/// <summary>
/// Makes finished units from a fixed seed, spread evenly over ten years: parts pass their stages, fail now and then, go back once more, and
/// diaphragms are also scrapped. Planted causes: every twelfth film lot and every fifteenth adhesive lot, jig JIG-07, and one builder at
/// the insulation test.
/// </summary>
internal sealed class ProductionLine(FilledWorkshop workshop, FillSize size, OrderedIds ids)
{
    private const string BadJig = "JIG-07";

    private readonly Random random = new(20261125);
    private readonly FilledLots lots = new(ids, workshop.Quality);
    private readonly Dictionary<string, int> made = [];
    private FillRows rows = new();
    private bool told;

    /// <summary>The rows of some units.</summary>
    public FillRows Make(int firstUnit, int count)
    {
        rows = new();
        for (var unit = firstUnit; unit < firstUnit + count; unit++)
        {
            told = size.IsTold(unit);
            MakeUnit(FilledWorkshop.Opened + (FilledWorkshop.Closed - FilledWorkshop.Opened) * ((double)unit / size.Units));
        }

        return rows;
    }

    private void MakeUnit(DateTimeOffset start)
    {
        PartFile? diaphragm;
        while ((diaphragm = MakeDiaphragm(start)) is null) { }

        var capsule = Register(PartKinds.Capsule, diaphragm.At.AddHours(2));
        Build(capsule, FilledRoutes.Stages[PartKinds.Capsule], [diaphragm]);
        var boards = Register(PartKinds.BoardSet, capsule.At.AddHours(-6));
        Build(boards, FilledRoutes.Stages[PartKinds.BoardSet], []);
        var unit = Register(PartKinds.Unit, (capsule.At > boards.At ? capsule.At : boards.At).AddHours(3));
        Build(unit, FilledRoutes.Stages[PartKinds.Unit], [boards, capsule]);
        diaphragm.Close(PartState.Fitted, fittedIn: capsule.Part.Id);
        capsule.Close(PartState.Fitted, fittedIn: unit.Part.Id);
        boards.Close(PartState.Fitted, fittedIn: unit.Part.Id);
        var shipped = random.NextDouble() < 0.9;
        if (shipped)
        {
            var at = unit.At.AddDays(1);
            unit.Record("ship", [new Shipment(ids.Next(at), unit.Part.Id, $"C-{random.Next(100_000)}", workshop.Quality, at, at)]);
        }

        unit.Close(shipped ? PartState.Shipped : PartState.Finished);
    }

    /// <summary>A good diaphragm, or null when this one was scrapped.</summary>
    private PartFile? MakeDiaphragm(DateTimeOffset start)
    {
        var file = Register(PartKinds.Diaphragm, start);
        file.CarrierCode = workshop.Jigs[random.Next(workshop.Jigs.Count)];
        var placed = start.AddMinutes(1);
        file.Record(
            "lay-into-carrier",
            [new CarrierPlacement(ids.Next(placed), file.Part.Id, file.CarrierCode, workshop.Builders[0], placed, placed)]
        );
        var failedAt = Build(file, FilledRoutes.Stages[PartKinds.Diaphragm], []);
        var freed = file.At.AddMinutes(1);
        file.Record(
            "leave-carrier",
            [new CarrierRelease(ids.Next(freed), file.Part.Id, file.CarrierCode, workshop.Builders[0], freed, freed)]
        );
        if (failedAt is null)
        {
            return file;
        }

        file.Close(PartState.Scrapped, failedAt);
        return null;
    }

    private PartFile Register(string kind, DateTimeOffset at)
    {
        at = new(at.Ticks / TimeSpan.TicksPerSecond * TimeSpan.TicksPerSecond, TimeSpan.Zero);
        var number = made[kind] = made.GetValueOrDefault(kind) + 1;
        var serial = string.Create(CultureInfo.InvariantCulture, $"{char.ToUpperInvariant(kind[0])}{at.Year % 100:00}-{number:0000000}");
        var part = new Part(ids.Next(at), serial, kind, FilledRoutes.Model, workshop.Routes[kind], workshop.Builders[0], at, at);
        var file = new PartFile(part, rows, ids, told);
        file.Record("register-part", [part]);
        return file;
    }

    /// <summary>Runs the stages; the code of the stage at which it was scrapped, or null when all were passed.</summary>
    private string? Build(PartFile file, FilledStage[] stages, IReadOnlyList<PartFile> children)
    {
        var odds = 1.0;
        foreach (var stage in stages)
        {
            for (var number = 1; ; number++)
            {
                var step = new StageStep(workshop, ids, random, file, stage, number, file.At.AddMinutes(30 + random.Next(300)));
                odds *= number == 1 ? step.Fit(lots, children, rows) : 1;
                var fails =
                    number < 3
                    && random.NextDouble()
                        < Chance(
                            stage.Failures,
                            odds * step.OddsOfBuilder * (file.CarrierCode == BadJig && stage.Code == "fine-tune" ? 4 : 1)
                        );
                var nonconformity = step.Record(fails, size.ReadingsPerAttempt);
                if (nonconformity is null)
                {
                    break;
                }

                var scrap = file.Part.Kind == PartKinds.Diaphragm && (number == 2 || random.NextDouble() < 0.4);
                step.Dispose(nonconformity, scrap);
                if (scrap)
                {
                    return stage.Code;
                }
            }
        }

        return null;
    }

    private static double Chance(double usual, double odds) => usual / (1 - usual) * odds is var o ? o / (1 + o) : 0;
}
