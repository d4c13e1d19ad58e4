using Traceability.Domain.Quality.Sampling;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.BoardSet;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Tests.Stages;

namespace Traceability.Domain.Tests.Quality.Sampling;

/// <summary>
/// Nonconforming boards are counted against the acceptance number. ISO 2859-1, tables 1 and 2-A: a lot of 91 to 150, level II, AQL 2.5 has
/// 20 boards to test, accepts with 1 and rejects with 2 (published values F13).
/// </summary>
public class SampleTallyTests
{
    private static readonly Lot Panel = new(
        Guid.Empty,
        "N-1",
        "board-panel",
        "invented",
        "1",
        120,
        "boards",
        AMethod.Opened,
        null,
        null,
        null,
        null,
        null,
        null,
        Guid.Empty,
        AMethod.Opened,
        AMethod.Opened
    );

    private static readonly int[] InSample = [.. Enumerable.Range(1, 120).Where(k => SampleOfLot.Of(Panel, k, 2.5)!.Contains)];
    private static readonly int[] Outside = [.. Enumerable.Range(1, 120).Except(InSample)];

    private static APart Board(int number, bool conforms)
    {
        var stage = ARoute.Stage("check") with
        {
            Method = "phantom-check",
            Parameters = new() { Numbers = new Dictionary<string, decimal> { ["samplingQualityLimitPct"] = 2.5m } },
        };
        var part = new APart(
            ARoute.Of(
                stage with
                {
                    Characteristics =
                    [
                        .. Names.Select(n => new Characteristic(
                            n,
                            n,
                            n.EndsWith("Ma", StringComparison.Ordinal) ? "mA" : "V",
                            null,
                            null,
                            n == "currentMa" ? 4 : null,
                            null,
                            true,
                            false
                        )),
                    ],
                }
            )
        ).Opened("check");
        part.TryRead(
                ("boardNumberInLot", Numbers.Text(number)),
                ("phantomSourceV", "48"),
                ("phantomTerminalV", "37"),
                ("currentMa", conforms ? "3" : "5")
            )
            .Accepted();
        part.TryClose().Accepted();
        return part;
    }

    private static readonly string[] Names = ["boardNumberInLot", "phantomSourceV", "phantomTerminalV", "currentMa"];

    private static SampleTally Of(int good, int bad, int badOutside = 0) =>
        SampleTally.Of(
            Panel,
            [
                .. InSample
                    .Take(good)
                    .Select(n => Board(n, true))
                    .Concat(InSample.Skip(good).Take(bad).Select(n => Board(n, false)))
                    .Concat(Outside.Take(badOutside).Select(n => Board(n, false)))
                    .Select(p => p.Dossier),
            ]
        )!;

    [Theory]
    [InlineData(19, 1, SampleVerdict.Accepted)]
    [InlineData(20, 0, SampleVerdict.Accepted)]
    [InlineData(18, 2, SampleVerdict.Failed)]
    [InlineData(0, 2, SampleVerdict.Failed)]
    [InlineData(18, 1, SampleVerdict.Open)]
    public void A_lot_is_accepted_open_or_fails_by_its_acceptance_number(int good, int bad, SampleVerdict verdict)
    {
        var tally = Of(good, bad);

        Assert.Equal(
            (20, 1, good + bad, bad, verdict),
            (tally.Plan.SampleSize, tally.Plan.Accept, tally.Tested, tally.Nonconforming, tally.Verdict)
        );
    }

    [Fact]
    public void Nonconforming_boards_outside_the_sample_are_named_and_do_not_count_against_the_plan()
    {
        var tally = Of(19, 1, badOutside: 3);

        Assert.Equal((SampleVerdict.Accepted, 3), (tally.Verdict, tally.NonconformingOutside));
        Assert.Contains("3 more outside the sample", tally.InWords(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_corrected_reading_counts_as_corrected_and_a_second_try_does_not_make_the_board_conform()
    {
        var (corrected, repaired) = (Board(InSample[0], false), Board(InSample[1], false));
        corrected.TryCorrect("currentMa", "3").Accepted();
        repaired.Decided(DispositionKind.Rework, "check").Opened("check");
        repaired
            .TryRead(
                ("boardNumberInLot", Numbers.Text(InSample[1])),
                ("phantomSourceV", "48"),
                ("phantomTerminalV", "37"),
                ("currentMa", "3")
            )
            .Accepted();
        repaired.TryClose().Accepted();

        Assert.Equal(1, SampleTally.Of(Panel, [corrected.Dossier, repaired.Dossier])!.Nonconforming);
    }

    [Fact]
    public void The_words_say_that_the_lot_fails_and_who_decides() =>
        Assert.Equal(
            "panel lot N-1: 2 of 2 boards tested so far nonconforming (20 to test, at most 1 accepted): the lot fails its plan; the"
                + " quality lead decides on quarantine",
            Of(0, 2).InWords()
        );

    [Fact]
    public void Without_a_sampled_board_there_is_no_count() =>
        Assert.Null(SampleTally.Of(Panel, [new APart(ARoute.Plain).Passed("mount").Dossier]));
}
