using CsCheck;
using Traceability.Domain.Quality.Comparisons;
using Traceability.Domain.Quality.FilmLots;

namespace Traceability.Domain.Tests.Quality.FilmLots;

public class FilmLotFailureTests
{
    private static readonly Gen<LotFate> AnyFate = Gen.Select(
        Gen.Int[1, 4], Gen.Int[1, 2], Gen.Int[0, 3], Gen.Bool, Gen.Int[0, 9],
        (lot, builder, failure, passed, parts) => new LotFate(
            $"F-{lot}", $"builder {builder}", failure switch { 2 => "insulation", 3 => "soak", _ => null }, passed, parts));

    [Fact]
    public void A_lot_is_counted_by_what_became_of_its_diaphragms()
    {
        FilmLotFailures lot = Assert.Single(FilmLotFailureReport.Of(
        [
            new("F-1", "w", null, true, 40), new("F-1", "w", null, false, 7), new("F-1", "w", "insulation", true, 3),
            new("F-1", "w", "insulation", false, 2), new("F-1", "w", "soak", false),
        ]).Lots);
        Assert.Equal((53, 7, 40, 3, 6), (lot.Started, lot.InWork, lot.PassedFirst, lot.PassedAfterRework, lot.Failed));
        Assert.Equal(new() { ["insulation"] = 5, ["soak"] = 1 }, new Dictionary<string, int>(lot.FailedByStage));
        Assert.Equal(40.0 / 46, lot.FirstPassYield.Value.Value);
    }

    [Fact]
    public void No_lots_give_an_empty_report() => Assert.Empty(FilmLotFailureReport.Of([]).Lots);

    [Fact]
    public void A_lot_alone_has_nothing_to_be_compared_with()
    {
        FilmLotFailures lot = Assert.Single(FilmLotFailureReport.Of([new("F-1", "w", null, true, 9), new("F-1", "w", "soak", false)]).Lots);
        Assert.Equal(
            "not enough data: needs at least 1 parts outside the group to compare with, has 0", lot.AgainstTheRest.Missing!.ToString());
        Assert.Null(lot.AdjustedP);
        Assert.False(lot.IsWorse());
    }

    [Fact]
    public void A_lot_still_in_work_has_no_yield_and_no_comparison()
    {
        FilmLotFailures lot = FilmLotFailureReport.Of([new("F-1", "w", null, false, 5), new("F-2", "w", "soak", false), new("F-2", "w", null, true)]).Lots[0];
        Assert.False(lot.FirstPassYield.IsKnown);
        Assert.False(lot.AgainstTheRest.IsKnown);
    }

    [Fact]
    public void Lots_without_any_failure_are_not_compared() => Assert.All(
        FilmLotFailureReport.Of([new("F-1", "w", null, true, 5), new("F-2", "w", null, true, 5)]).Lots,
        lot => Assert.Equal("failed parts", lot.AgainstTheRest.Missing!.What));

    [Fact]
    public void The_bad_lot_stands_out_and_the_good_ones_do_not()
    {
        var lots = FilmLotFailureReport.Of(
        [
            .. Enumerable.Range(1, 9).SelectMany(i => new LotFate[] { new($"F-{i}", "w", null, true, 95), new($"F-{i}", "w", "soak", false, 5) }),
            new("F-bad", "w", null, true, 70), new("F-bad", "w", "insulation", false, 30),
        ]).Lots;
        Assert.Equal(["F-bad"], lots.Where(l => l.IsWorse()).Select(l => l.Lot));
    }

    [Fact]
    public void A_lot_that_went_to_the_busy_builder_with_many_failures_does_not_look_bad()
    {
        // Both lots fail alike at each builder (30 % and 5 %), but F-1 went mostly to the first: Fisher sees a bad lot where there is none.
        FilmLotFailures lot = FilmLotFailureReport.Of(
        [
            new("F-1", "builder 1", "soak", false, 60), new("F-1", "builder 1", null, true, 140),
            new("F-1", "builder 2", "soak", false, 2), new("F-1", "builder 2", null, true, 38),
            new("F-2", "builder 1", "soak", false, 12), new("F-2", "builder 1", null, true, 28),
            new("F-2", "builder 2", "soak", false, 10), new("F-2", "builder 2", null, true, 190),
        ]).Lots[0];
        Assert.True(lot.AgainstTheRest.Value.P < 1e-5);
        Assert.Equal(1, lot.WithinStrata.Value.CommonOddsRatio, 12);
        Assert.False(lot.IsWorse());
    }

    [Fact]
    public void Rolled_throughput_yield_multiplies_the_stages_of_the_lot()
    {
        FilmLotFailures lot = FilmLotFailureReport.Of(
            [new("F-1", "w", null, true, 5)],
            [new("F-1", "diaphragm", 50, 45), new("F-1", "soak", 45, 36), new("F-2", "soak", 10, 1)]).Lots[0];
        Assert.Equal(0.9 * 0.8, lot.RolledThroughputYield.Value.Value, 12);
    }

    [Fact]
    public void Without_stage_counts_there_is_no_rolled_throughput_yield() =>
        Assert.False(FilmLotFailureReport.Of([new("F-1", "w", null, true, 5)]).Lots[0].RolledThroughputYield.IsKnown);

    [Fact]
    public void The_deciding_p_is_the_stratified_one_when_there_are_several_strata() => AnyFate.List[0, 40].Sample(fates =>
    {
        FilmLotFailureReport report = FilmLotFailureReport.Of(fates);
        Assert.All(report.Lots, lot => Assert.Equal(
            lot.IsStratified ? lot.WithinStrata.Value.PCorrected : lot.AgainstTheRest.IsKnown ? lot.AgainstTheRest.Value.P : null, lot.P));
        Assert.All(report.Lots, lot => Assert.True(lot.AdjustedP is null || lot.AdjustedP >= lot.P));
    });

    [Fact]
    public void The_order_of_the_rows_and_their_grouping_change_nothing() => AnyFate.List[0, 30].Sample(fates =>
    {
        LotFate[] singly = [.. Enumerable.Reverse(fates).SelectMany(f => Enumerable.Repeat(f with { Parts = 1 }, f.Parts))];
        var counted = FilmLotFailureReport.Of(fates).Lots.Where(l => l.Started > 0).Select(Figures);
        Assert.Equal(counted, FilmLotFailureReport.Of(singly).Lots.Select(Figures));

        static (string, int, int, int, double?, double?) Figures(FilmLotFailures l) => (l.Lot, l.Started, l.Failed, l.InWork, Rounded(l.P), Rounded(l.AdjustedP));
        static double? Rounded(double? p) => p is { } x ? Math.Round(x, 12) : null;
    });

    [Fact]
    public void Every_diaphragm_is_counted_once() => AnyFate.List[0, 40].Sample(fates =>
        Assert.All(FilmLotFailureReport.Of(fates).Lots, l =>
        {
            Assert.Equal(l.Started, l.InWork + l.PassedFirst + l.Failed);
            Assert.Equal(l.Failed, l.FailedByStage.Values.Sum());
        }));

    [Fact]
    public void One_more_failure_never_makes_a_lot_look_better() =>
        Gen.Select(Gen.Int[1, 30], Gen.Int[0, 29], Gen.Int[1, 60], Gen.Int[1, 60]).Sample((parts, failed, otherFailed, otherPassed) =>
        {
            failed = Math.Min(failed, parts - 1);
            FisherExactResult Compared(int k) => FisherExact.Test(new(k, parts - k, otherFailed, otherPassed)).Value;
            FisherExactResult before = Compared(failed), after = Compared(failed + 1);
            Assert.True(after.OddsRatio >= before.OddsRatio && after.PMoreHere <= before.PMoreHere + 1e-12);
            Assert.True(after.OddsRatioInterval.Lower >= before.OddsRatioInterval.Lower);
        });
}
