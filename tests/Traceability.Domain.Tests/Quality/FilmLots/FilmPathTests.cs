using CsCheck;
using Traceability.Domain.Quality.FilmLots;

namespace Traceability.Domain.Tests.Quality.FilmLots;

/// <summary>A film through its diaphragm, capsule and unit: what one path says to every question that can be put to it.</summary>
public class FilmPathTests
{
    private static readonly FilmStep Ring = new("diaphragm", "diaphragm", "ring", true, 1, 0);
    private static readonly FilmStep Insulation = new("capsule", "insulation", "insulation", true, 2, 1);
    private static readonly FilmStep Release = new("unit", "final", "release", false, 1, 1);
    private static readonly FilmPath Path = new(
        true,
        true,
        [Ring, Insulation, Release],
        [new("insulation", "insulation", true, true), new("final", "release", false, true), new(FilmPath.Field, null, false, true)],
        [new("capsule", false, false), new("unit", true, true)]
    );

    [Theory]
    [InlineData(null, "insulation", false)]
    [InlineData("insulation", "insulation", true)]
    [InlineData("release", "final", false)]
    [InlineData("final", "final", false)]
    [InlineData("field", "field", false)]
    [InlineData("ring", null, true)]
    [InlineData("diaphragm", null, true)]
    [InlineData("soak", null, false)]
    public void A_question_is_answered_by_the_first_failure_where_it_was_asked(string? asked, string? failedAt, bool passed)
    {
        LotFate fate = Counted(Path).FateAt(asked);
        Assert.Equal((failedAt, passed), (fate.FirstFailedAt, fate.Passed));
    }

    [Fact]
    public void A_place_where_nothing_was_judged_is_still_ahead() => Assert.True(Counted(Path).FateAt("soak").IsOnItsWay);

    [Fact]
    public void Not_come_back_from_the_field_is_passed_there_once_it_was_shipped()
    {
        Assert.False(Counted(Path with { Faults = [] }).FateAt(FilmPath.Field).IsOnItsWay);
        Assert.True(Counted(Path with { Faults = [], Shipped = false }).FateAt(FilmPath.Field).IsOnItsWay);
    }

    [Fact]
    public void Finished_with_every_failure_healed_is_passed_after_rework()
    {
        LotFate fate = Counted(Path with { Faults = [new("insulation", "insulation", true, true)] }).FateAt(null);
        Assert.True(fate is { FirstFailedAt: "insulation", Passed: true });
    }

    [Fact]
    public void A_latest_failure_is_told_only_of_films_that_failed_where_it_was_asked()
    {
        DateTimeOffset at = new(2026, 3, 1, 0, 0, 0, TimeSpan.Zero);
        FilmCount count = new("F-1", "", Path, 3, at);
        Assert.Equal(at, count.FateAt("final").LastFailure);
        Assert.Null(count.FateAt("soak").LastFailure);
    }

    [Fact]
    public void What_a_lot_got_into_is_counted_by_kind_over_all_its_paths()
    {
        FilmPath second = Path with { Reached = [new("unit", true, false), new("unit", false, false)] };
        FilmCount[] counts =
        [
            new("F-1", "B1", Path, 3, null),
            new("F-1", "B2", second, 2, null),
            new("F-2", "B1", second with { Reached = [] }, 1, null),
        ];
        Assert.Equal([new("F-1", "capsule", 3, 0, 0), new LotReach("F-1", "unit", 7, 5, 3)], FilmCount.ReachOf(counts));
    }

    [Fact]
    public void Stages_are_counted_for_every_film_of_every_path_and_stratum()
    {
        FilmPath ring = Path with { Steps = [Ring], Faults = [], Reached = [] };
        FilmCount[] counts = [new("F-1", "B1", Path, 3, null), new("F-1", "B2", ring, 2, null), new("F-2", "B1", ring, 1, null)];
        LotStageCount[] all =
        [
            new("F-1", "B1", "capsule", "insulation", 6, 3),
            new("F-1", "B1", "diaphragm", "ring", 3, 0),
            new("F-1", "B2", "diaphragm", "ring", 2, 0),
            new("F-1", "B1", "unit", "field", 3, 3) { IsAside = true },
            new("F-1", "B1", "unit", "release", 3, 3),
            new("F-2", "B1", "diaphragm", "ring", 1, 0),
        ];
        Assert.Equal(all, LotStageCount.Of(counts, null));
        Assert.Equal(all[..1], LotStageCount.Of(counts, "insulation"));
        Assert.Equal([all[3] with { IsAside = false }], LotStageCount.Of(counts, FilmPath.Field));
    }

    [Fact]
    public void What_was_reported_by_hand_outside_any_stage_is_of_all_that_could_have_been_reported()
    {
        FilmPath scratched = Path with { Steps = [Ring], Faults = [new("diaphragm", null, false, true)], Reached = [] },
            stained = Path with { Faults = [new("final", null, false, true)] };
        FilmCount[] counts =
        [
            new("F-1", "", scratched, 1, null),
            new("F-1", "", Path with { Faults = [] }, 7, null),
            new("F-1", "", stained, 2, null),
        ];
        var byHand = LotStageCount.Of(counts, null).Where(s => s.Stage == LotStageCount.ByHand);
        Assert.Equal(
            [new("F-1", "", "diaphragm", LotStageCount.ByHand, 10, 1), new LotStageCount("F-1", "", "unit", LotStageCount.ByHand, 9, 2)],
            byHand
        );
    }

    /// <summary>The second diaphragm of a lot in a capsule: its own stages count with it, those of the capsule with the first.</summary>
    [Fact]
    public void A_film_that_stands_behind_another_of_its_lot_counts_as_a_diaphragm_alone()
    {
        FilmPath behind = new(true, true, [Ring, Insulation with { Reached = 0, Failed = 0 }], [], []),
            failed = behind with { Faults = [new("insulation", "insulation", false, false)] };
        Assert.Equal(
            [new LotStageCount("F-1", "", "diaphragm", "ring", 1, 0)],
            LotStageCount.Of([Counted(behind)], null).Where(s => s.Stage != "insulation")
        );
        Assert.DoesNotContain(LotStageCount.Of([Counted(failed)], null), s => s.Stage == "insulation");
        FilmLotFailures lot = Assert.Single(
            FilmLotFailureReport.Of(FilmCohort.Of([Counted(Path with { Faults = [] }), Counted(behind), Counted(failed)], null)).Lots
        );
        Assert.Equal((3, 0, 1, 0), (lot.Started, lot.OnItsWay, lot.PassedFirst, lot.Failed));
    }

    /// <summary>
    /// Whatever is asked: a film that failed is not in work, one that passed there without a fault is not failed, and asking for everything
    /// overlooks no fault.
    /// </summary>
    [Fact]
    public void Every_film_has_one_fate()
    {
        var places = Gen.Int[0, 4].Select(i => new[] { "diaphragm", "soak", "insulation", "final", "field" }[i]);
        var faults = Gen.Select(
            places,
            Gen.Int[0, 2].Select(i => new[] { "ring", "insulation", null }[i]),
            Gen.Bool,
            (place, stage, healed) => new FilmFault(place, stage, healed, true)
        ).Array[0, 4];
        var steps = Gen.Select(places, Gen.Bool, (place, passed) => new FilmStep("capsule", place, place, passed, 1, passed ? 0 : 1)).Array[
            0,
            4
        ];
        Gen.Select(Gen.Bool, Gen.Bool, steps, faults, places)
            .Sample(
                (finished, shipped, s, f, asked) =>
                {
                    var path = new FilmPath(finished, shipped, s, f, []);
                    LotFate whole = Counted(path).FateAt(null),
                        there = Counted(path).FateAt(asked);
                    Assert.Equal(f.FirstOrDefault()?.Place, whole.FirstFailedAt);
                    Assert.True(there.FirstFailedAt is null || whole.FirstFailedAt is not null);
                    Assert.Equal(
                        there.IsOnItsWay,
                        there.FirstFailedAt is null && !path.StepsAt(asked).Any(x => x.Passed) && !(asked == "field" && shipped)
                    );
                    Assert.False(there.Passed && f.Any(x => x.Is(asked) && !x.Healed));
                }
            );
    }

    private static FilmCount Counted(FilmPath path) => new("F-1", "", path, 1, null);
}
