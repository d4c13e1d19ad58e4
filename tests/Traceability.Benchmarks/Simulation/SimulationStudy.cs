using System.Globalization;
using Traceability.Domain.Quality.Causes;

namespace Traceability.Benchmarks;

/// <summary>
/// Does the ranking of causes find what was planted, and how often does it cry wolf? Simulated workshops without a cause, with one and
/// with two, all from fixed seeds. The false discovery rate is the mean, over the workshops, of the share of false alarms among the levels
/// that stand out: without a cause everything that stands out is one, with causes whatever has nothing to do with any. It must be 5 % or
/// less, within the binomial error of this many workshops. Levels that merely go with a planted cause - the weeks of a bad lot - are
/// counted by themselves: they do fail more often.
/// </summary>
internal static class SimulationStudy
{
    private const int Workshops = 200;
    private const double WantedRate = 0.05;
    private static readonly double HighestRate = WantedRate + 1.96 * Math.Sqrt(WantedRate * (1 - WantedRate) / Workshops);

    public static int Run()
    {
        Console.WriteLine(
            $"| {Workshops} workshops each | ranked first: a planted cause | planted causes that stand out | levels that go with a"
                + $" cause and stand out, per workshop | false discovery rate (at most {Percent(HighestRate)}) |"
        );
        Console.WriteLine("|---|---|---|---|---|");
        return new[] { 0, 1, 2 }.Select(Study).ToList().TrueForAll(rate => rate <= HighestRate) ? 0 : 1;
    }

    /// <summary>Prints a line and gives the false discovery rate.</summary>
    private static double Study(int causes)
    {
        var (first, found, companions, falseShares) = (0, 0, 0, 0.0);
        for (var seed = 0; seed < Workshops; seed++)
        {
            var workshop = new SimulatedWorkshop(1000 * causes + seed);
            var planted = workshop.Plant(causes);
            var lines = CauseRanking.Rank(workshop.Build(planted)).Value.Associations;
            var standing = lines.Where(l => l.StandsOut(WantedRate)).ToList();
            var (right, alarms) = (
                standing.Count(l => IsPlanted(l, planted)),
                standing.Count(l => SimulatedWorkshop.IsUnrelated(l.Factor, planted))
            );
            first += IsPlanted(lines[0], planted) ? 1 : 0;
            found += right;
            companions += standing.Count - right - alarms;
            falseShares += alarms / Math.Max(1.0, standing.Count);
        }

        var rate = falseShares / Workshops;
        Console.WriteLine(
            causes == 0
                ? $"| no cause | - | - | - | {Percent(rate)} |"
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"| causes: {causes} | {Percent((double)first / Workshops)} | {Percent((double)found / Workshops / causes)} |"
                        + $" {(double)companions / Workshops:0.00} | {Percent(rate)} |"
                )
        );
        return rate;
    }

    private static bool IsPlanted(CauseAssociation line, IReadOnlyList<PlantedCause> planted) =>
        planted.Any(p => p.Factor == line.Factor && p.Level == line.Level);

    private static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.0} %");
}
