using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.ManyTests;

namespace Traceability.Domain.Quality.Reports;

/// <summary>First-pass and rolled-throughput yield of the month, against the month before, and over twelve months.</summary>
internal static class MonthYields
{
    private const int MonthsBack = 11;

    private const double FalseDiscoveryRate = 0.05;

    private sealed record Pair(StageVerdicts Now, StageVerdicts Before, Computed<FisherExactResult> Comparison);

    public static YieldSection Of(MonthlyReportFacts facts, MonthWords words)
    {
        var before = facts.StagesBefore.ToLookup(s => (s.Model, s.Kind, s.Stage));
        Pair[] pairs =
        [
            .. facts
                .Stages.OrderBy(s => s.Model, StringComparer.Ordinal)
                .ThenBy(s => words.PlaceOf(s.Model, s.Kind, s.Stage))
                .ThenBy(s => s.Stage, StringComparer.Ordinal)
                .Select(s => Paired(s, before[(s.Model, s.Kind, s.Stage)].FirstOrDefault() ?? s with { Judged = 0, PassedFirst = 0 })),
        ];
        var known = pairs.Where(p => p.Comparison.IsKnown).ToArray();
        var adjusted = known
            .Zip(BenjaminiHochberg.Adjust([.. known.Select(p => p.Comparison.Value.P)]))
            .ToDictionary(a => a.First.Now, a => a.Second);
        var models = pairs
            .GroupBy(p => p.Now.Model)
            .Select(g =>
                ModelOf(
                    g.Key,
                    [.. g.Select(p => LineOf(p, adjusted.TryGetValue(p.Now, out var q) ? q : null, words))],
                    [.. g.Select(p => p.Now)],
                    [.. facts.StagesBefore.Where(s => s.Model == g.Key)]
                )
            );
        return new(
            ReportMonth.TitleOf(facts.Month.FirstOf(1)),
            [.. models],
            pairs.Length == 0 ? $"No stage came to a verdict {words.InTheMonth}." : null,
            "Counted are first verdicts: of every part the first attempt at a stage that came to a verdict, when it was begun in the"
                + " month; corrections are taken into account, a conditional verdict counts as not passed. "
                + "First-pass yield: passed of judged, Wilson's 95 % interval. Rolled-throughput yield: the product over the stages"
                + " with a first verdict, 95 % interval by recovering variances. "
                + "Against the month before: Fisher's exact test, p adjusted over all stages of all models (Benjamini-Hochberg); better"
                + " or worse is said at an adjusted p of at most 0.05."
        );
    }

    public static TrendSection TrendOf(MonthlyReportFacts facts, MonthWords words)
    {
        var counts = facts.Months.ToLookup(m => m.Month);
        TrendMonth[] months =
        [
            .. Enumerable
                .Range(0, MonthsBack + 1)
                .Select(i => facts.Month.FirstOf(MonthsBack - i))
                .Select(first => TrendOf(first, [.. counts[ReportMonth.CodeOf(first)]])),
        ];
        return new(
            months,
            months.All(m => m.FirstPass.Of == 0) ? $"No stage came to a verdict in the twelve months up to {facts.Month.Title}." : null,
            "First verdicts of all models and kinds of part by the month in which the attempt was begun, counted as above. First-pass"
                + " yield: passed of all first verdicts, Wilson's 95 % interval. "
                + "Rolled-throughput yield: the product over the stages that had a first verdict in that month."
                + (facts.Month.SoFar ? $" {facts.Month.Title} is told so far, {words.AtTheEnd}." : "")
        );
    }

    private static TrendMonth TrendOf(DateOnly first, IReadOnlyList<MonthVerdicts> stages) =>
        new(
            ReportMonth.CodeOf(first),
            ReportMonth.TitleOf(first),
            ReportedShare.FirstPass(stages.Sum(s => s.PassedFirst), stages.Sum(s => s.Judged)),
            ReportedShare.Rolled([.. stages.Select(s => (s.PassedFirst, s.Judged))])
        );

    private static Pair Paired(StageVerdicts now, StageVerdicts before) =>
        new(
            now,
            before,
            FisherExact.Test(new(now.Judged - now.PassedFirst, now.PassedFirst, before.Judged - before.PassedFirst, before.PassedFirst))
        );

    private static ModelYield ModelOf(
        string model,
        IReadOnlyList<StageYieldLine> lines,
        IReadOnlyList<StageVerdicts> now,
        IReadOnlyList<StageVerdicts> before
    ) => new(model, AllOf(now), AllOf(before), RolledOf(now), RolledOf(before), lines);

    private static ReportedShare AllOf(IReadOnlyList<StageVerdicts> stages) =>
        ReportedShare.FirstPass(stages.Sum(s => s.PassedFirst), stages.Sum(s => s.Judged));

    private static ReportedShare RolledOf(IReadOnlyList<StageVerdicts> stages) =>
        ReportedShare.Rolled([.. stages.Select(s => (s.PassedFirst, s.Judged))]);

    private static StageYieldLine LineOf(Pair pair, double? adjusted, MonthWords words)
    {
        var (share, before) = (
            ReportedShare.FirstPass(pair.Now.PassedFirst, pair.Now.Judged),
            ReportedShare.FirstPass(pair.Before.PassedFirst, pair.Before.Judged)
        );
        return new(
            pair.Now.Kind,
            pair.Now.Stage,
            words.TitleOf(pair.Now.Model, pair.Now.Kind, pair.Now.Stage),
            share,
            before,
            pair.Comparison.Match(c => (double?)c.P, _ => null),
            adjusted,
            ChangeOf(share, before, adjusted)
        );
    }

    private static string ChangeOf(ReportedShare share, ReportedShare before, double? adjusted) =>
        before.Value is null ? "nothing to compare with"
        : adjusted is null
            ? share.Value == 1 ? "no failure in either month"
                : "no pass in either month"
        : adjusted > FalseDiscoveryRate ? "no clear difference"
        : share.Value > before.Value ? "better"
        : "worse";
}
