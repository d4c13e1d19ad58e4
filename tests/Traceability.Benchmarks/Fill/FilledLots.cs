using System.Globalization;
using Traceability.Domain.Records;

namespace Traceability.Benchmarks;

/// <summary>Lots of every kind, used up one after the other: so many parts each.</summary>
internal sealed class FilledLots(OrderedIds ids, Guid by)
{
    private static readonly Dictionary<string, (string Prefix, int PartsEach)> Kinds = new()
    {
        [Lot.FilmKind] = ("FILM", 400),
        ["adhesive"] = ("GLUE", 150),
        ["diaphragm-ring"] = ("RING", 1000),
        ["board-panel"] = ("PAN", 500),
        ["body"] = ("BODY", 2000),
    };

    private readonly Dictionary<string, (int Used, int Number, Lot Lot)> open = [];

    /// <summary>The lot that lies open; a new one is received and released when it is used up.</summary>
    public (Lot Lot, int Number) Take(string kind, DateTimeOffset at, FillRows rows)
    {
        var (prefix, each) = Kinds[kind];
        if (!open.TryGetValue(kind, out var now) || now.Used == each)
        {
            var received = at.AddDays(-20);
            var number = now.Number + 1;
            var lot = new Lot(
                ids.Next(received),
                string.Create(CultureInfo.InvariantCulture, $"{prefix}-{number:00000}"),
                kind,
                $"Invented supplier {number % 3 + 1}",
                $"S{number}",
                each,
                "piece",
                received,
                null,
                null,
                null,
                null,
                null,
                null,
                by,
                received,
                received
            );
            rows.Add(lot);
            rows.Add(
                new LotDecision(ids.Next(received), lot.Id, LotState.Released, "invented", by, received.AddDays(1), received.AddDays(1))
            );
            now = (0, number, lot);
        }

        open[kind] = now with { Used = now.Used + 1 };
        return (now.Lot, now.Number);
    }
}
