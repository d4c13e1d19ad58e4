using CsCheck;
using Traceability.Domain.Records;
using Traceability.Domain.Stages.BoardSet;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Tests.Stages;

public class BoardMethodTests
{
    /// <summary>Published value E14-002: 4 mA leave 34.4 V of 48 V.</summary>
    [Fact]
    public void The_current_comes_from_the_voltages_too()
    {
        var outcome = Checked(48, 34.4m, 4.1m);
        Assert.Equal([4.00m, 0.10m, 5.90m], new[] { "currentByVoltageMa", "currentAgreementMa", "phantomMarginMa" }.Select(outcome.Value));
    }

    [Theory]
    [InlineData(10, 0)]
    [InlineData(10.01, -0.01)]
    public void The_margin_ends_at_ten_milliampere(double milliampere, double margin) =>
        Assert.Equal((decimal)margin, Checked(48, 14, (decimal)milliampere).Value("phantomMarginMa"));

    [Theory]
    [InlineData(0, 0, 1, "check the sign")]
    [InlineData(48, -1, 1, "check the sign")]
    [InlineData(48, 40, -1, "check the sign")]
    [InlineData(40, 48, 1, "check which is which")]
    public void Voltages_that_cannot_be_get_no_verdict(int source, int terminal, int current, string words) =>
        Assert.Contains(words, Checked(source, terminal, current).Unreadable, StringComparison.Ordinal);

    /// <summary>ISO 2859-1, tables 1 and 2-A: 91 to 150 items, level II: code letter F, 20 items; AQL 2.5: accept 1, reject 2.</summary>
    [Fact]
    public void The_sample_is_as_large_as_the_standard_says_and_spread_over_the_lot()
    {
        var inSample = Enumerable.Range(1, 120).Where(k => SampleOfLot.Of(Panel(120), k, 2.5)!.Contains).ToList();

        Assert.Equal(20, inSample.Count);
        Assert.Equal(1, inSample[0]);
        Assert.All(inSample.Zip(inSample.Skip(1)), pair => Assert.Equal(6, pair.Second - pair.First));
        Assert.Contains(
            "accepted with at most 1 nonconforming, held with 2",
            SampleOfLot.Of(Panel(120), 1, 2.5)!.InWords("N-1"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_sample_has_as_many_boards_as_the_plan_whatever_the_lot() =>
        Gen.Int[2, 3000]
            .Sample(size =>
                Enumerable.Range(1, size).Count(k => SampleOfLot.Of(Panel(size), k, 1.0)!.Contains)
                == SamplingPlan.ForLot(size, 1.0).SampleSize
            );

    [Theory]
    [InlineData(1, false)]
    [InlineData(2, true)]
    [InlineData(121, false)]
    public void A_board_in_the_sample_is_measured_fully_and_another_need_not(int board, bool judged) =>
        Assert.Equal(judged, Sampled(Panel(120)).Enter("boardNumberInLot", board).Judge().Unreadable is null);

    [Fact]
    public void A_board_without_a_panel_lot_is_measured_fully()
    {
        var stage = Sampled(null).Enter("boardNumberInLot", 2);
        Assert.Contains("still needs boardGainDb", stage.Judge().Unreadable, StringComparison.Ordinal);
        Assert.Null(stage.Enter("boardGainDb", -1.5m).Judge().Unreadable);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1.5)]
    public void A_board_number_that_cannot_be_gets_no_verdict(double board) =>
        Assert.Contains(
            "numbered from 1",
            Sampled(Panel(120)).Enter("boardNumberInLot", (decimal)board).Judge().Unreadable,
            StringComparison.Ordinal
        );

    [Fact]
    public void A_quality_limit_outside_the_table_is_refused_with_the_route() =>
        Assert.Contains(
            Sampled(null).Numbers(("samplingQualityLimitPct", 3)).Problems,
            p => p.Contains("ISO 2859-1", StringComparison.Ordinal)
        );

    private static AMethod Stage =>
        AMethod
            .Named("phantom-check")
            .Reads("phantomSourceV", "phantomTerminalV")
            .ReadsIn("mA", "supplyCurrentMa")
            .Computes("currentByVoltageMa", "currentAgreementMa", "phantomMarginMa");

    private static StageOutcome Checked(decimal source, decimal terminal, decimal current) =>
        Stage.Enter("phantomSourceV", source).Enter("phantomTerminalV", terminal).Enter("supplyCurrentMa", current).Judge();

    private static AMethod Sampled(Lot? panel) =>
        (
            Stage.Reads("boardNumberInLot").MayRead("boardGainDb").Numbers(("samplingQualityLimitPct", 1)) with
            {
                Inside = panel is null ? new Dictionary<string, FittedThing>() : new() { ["panel"] = new FittedLot("panel", panel) },
            }
        )
            .Enter("phantomSourceV", 48)
            .Enter("phantomTerminalV", 37.12m)
            .Enter("supplyCurrentMa", 3.2m);

    private static Lot Panel(int boards) =>
        new(
            Guid.Empty,
            "N-1",
            "board-panel",
            "invented",
            "1",
            boards,
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
}
