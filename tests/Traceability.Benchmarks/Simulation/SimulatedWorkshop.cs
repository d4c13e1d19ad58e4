using System.Globalization;
using Traceability.Domain.Quality.Causes;

namespace Traceability.Benchmarks;

/// <summary>A cause planted in a simulated workshop: parts of this level fail more often by these odds.</summary>
internal sealed record PlantedCause(string Factor, string Level, double OddsRatio);

/// <summary>
/// A quarter of an invented workshop as rows of facts. Film lots, adhesive lots and loads are used up one after the other and so go
/// with the weeks; a film lot has one supplier; whoever works, on which jig and instrument, is left to chance.
/// </summary>
internal sealed class SimulatedWorkshop
{
    private const int Weeks = 13;
    private const double UsualFailures = 0.08;
    private static readonly HashSet<string> GoWithTime = ["film lot", "film supplier", "adhesive lot", "load", "week", "route revision"];

    private readonly Random random;
    private readonly int parts;

    public SimulatedWorkshop(int seed)
    {
        random = new(seed);
        parts = random.Next(300, 900);
    }

    /// <summary>
    /// As many causes as asked for, each in a level with enough parts for a cause to be seen at all: of 3 to 6 times the usual odds.
    /// </summary>
    public IReadOnlyList<PlantedCause> Plant(int causes)
    {
        (string Factor, int Levels)[] where = [("film lot", 10), ("adhesive lot", 6), ("jig", 8), ("instrument", 4), ("builder", 5)];
        random.Shuffle(where);
        return
        [
            .. where
                .Take(causes)
                .Select(w => new PlantedCause(w.Factor, Name(w.Factor, random.Next(w.Levels)), 3 + 3 * random.NextDouble())),
        ];
    }

    /// <summary>
    /// Whether a factor has nothing to do with any planted cause; one that goes with time goes, more or less, with every other that does.
    /// </summary>
    public static bool IsUnrelated(string factor, IReadOnlyList<PlantedCause> planted) =>
        planted.All(p => p.Factor != factor && !(GoWithTime.Contains(p.Factor) && GoWithTime.Contains(factor)));

    /// <summary>The parts with what they were made of and whether they failed.</summary>
    public FactorTable Build(IReadOnlyList<PlantedCause> planted)
    {
        var supplierOfFilm = Enumerable.Range(0, 10).Select(_ => random.Next(3)).ToArray();
        return FactorTable.FromRows(Enumerable.Range(0, parts).Select(i => Row((double)i / parts, supplierOfFilm, planted)));
    }

    private FactorRow Row(double along, int[] supplierOfFilm, IReadOnlyList<PlantedCause> planted)
    {
        // Two lots lie open side by side, so the change from one to the next is not sharp.
        var film = Math.Clamp((int)(along * 10 + random.NextDouble() * 2 - 1), 0, 9);
        var levels = new Dictionary<string, string>
        {
            ["film lot"] = Name("film lot", film),
            ["film supplier"] = Name("film supplier", supplierOfFilm[film]),
            ["adhesive lot"] = Name("adhesive lot", Math.Clamp((int)(along * 6 + random.NextDouble() - 0.5), 0, 5)),
            ["load"] = Name("load", (int)(along * 40)),
            ["week"] = Name("week", (int)(along * Weeks)),
            ["route revision"] = Name("route revision", along < 0.6 ? 1 : 2),
        };
        foreach (
            var (factor, count) in new[]
            {
                ("jig", 8),
                ("instrument", 4),
                ("station", 3),
                ("builder", 5),
                ("weekday", 5),
                ("position in load", 6),
            }
        )
        {
            levels[factor] = Name(factor, random.Next(count));
        }

        var odds = planted
            .Where(c => levels[c.Factor] == c.Level)
            .Aggregate(UsualFailures / (1 - UsualFailures), (o, c) => o * c.OddsRatio);
        return new(random.NextDouble() < odds / (1 + odds), null, levels);
    }

    private static string Name(string factor, int number) => string.Create(CultureInfo.InvariantCulture, $"{factor} {number + 1}");
}
