using CsCheck;
using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Pairing;
using Traceability.Domain.Routes;
using Traceability.Domain.Tests.Gates.Vocabulary;

namespace Traceability.Domain.Tests.Quality;

public class MateFitTests
{
    private static readonly Guid OneLot = new(1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);
    private static readonly Guid OtherLot = new(2, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);

    private static readonly MatchRule Rule = new(["front", "rear"], "ringHz", 20) { Further = [new("tensionNm", 4)] };

    private static PartInput Film(decimal hertz, decimal? tension, Guid? lot = null) =>
        Something.Part("", values: tension is { } t ? [("ringHz", hertz), ("tensionNm", t)] : [("ringHz", hertz)]) with
        {
            FilmLotId = lot,
        };

    /// <summary>3-4-5: 12 of 20 Hz and 3.2 of 4 N/m are 0.6 and 0.8 (by hand).</summary>
    [Fact]
    public void Both_differences_count_each_in_shares_of_what_is_allowed()
    {
        var fit = MateFit.Of(Rule, Film(900, 40), Film(912, 43.2m))!;
        Assert.Equal((12m, 3.2m, true), (fit.Difference, fit.Further[0], fit.Within));
        Assert.Equal(1, fit.Cost, 12);
    }

    [Theory]
    [InlineData(20, 4, true)]
    [InlineData(20.1, 0, false)]
    [InlineData(0, 4.1, false)]
    public void Each_difference_is_judged_at_its_own_limit(double hertz, double tension, bool within) =>
        Assert.Equal(within, MateFit.Of(Rule, Film(900, 40), Film(900 + (decimal)hertz, 40 + (decimal)tension))!.Within);

    [Fact]
    public void Another_film_lot_counts_only_where_the_route_says_so()
    {
        var (a, b) = (Film(900, 40, OneLot), Film(900, 40, OtherLot));
        Assert.Equal((false, true), (MateFit.Of(Rule, a, b)!.SameFilmLot, MateFit.Of(Rule, a, b)!.Within));
        Assert.False(MateFit.Of(Rule with { SameFilmLot = true }, a, b)!.Within);
        Assert.True(MateFit.Of(Rule with { SameFilmLot = true }, a, Film(900, 40, OneLot))!.Within);
        Assert.Null(MateFit.Of(Rule, Film(900, 40), Film(900, 40))!.SameFilmLot);
    }

    [Fact]
    public void A_part_without_the_value_that_must_match_has_no_fit_and_one_without_a_further_value_is_not_judged_by_it()
    {
        Assert.Null(MateFit.Of(Rule, Film(900, 40), Something.Part("")));
        var fit = MateFit.Of(Rule, Film(900, 40), Film(910, null))!;
        Assert.Equal((null, 0.5, true), (fit.Further[0], fit.Cost, fit.Within));
    }

    [Fact]
    public void Where_nothing_may_differ_equal_parts_still_go_together()
    {
        var strict = Rule with { MaximumDifference = 0, Further = [] };
        Assert.True(MateFit.Of(strict, Film(900, null), Film(900, null))!.Within);
        Assert.Equal(
            (false, double.PositiveInfinity),
            (MateFit.Of(strict, Film(900, null), Film(901, null))!.Within, MateFit.Of(strict, Film(900, null), Film(901, null))!.Cost)
        );
    }

    [Fact]
    public void It_is_the_same_either_way_round_and_never_better_when_further_apart() =>
        Gen.Select(Gen.Int[800, 1000], Gen.Int[800, 1000], Gen.Int[30, 50], Gen.Int[30, 50], Gen.Int[0, 50])
            .Sample(
                (f1, f2, t1, t2, more) =>
                {
                    var (there, back) = (MateFit.Of(Rule, Film(f1, t1), Film(f2, t2))!, MateFit.Of(Rule, Film(f2, t2), Film(f1, t1))!);
                    var further = MateFit.Of(Rule, Film(f1, t1), Film(f2 + (f2 >= f1 ? more : -more), t2))!;
                    Assert.Equal((there.Cost, there.Within), (back.Cost, back.Within));
                    Assert.True(further.Cost >= there.Cost && !(further.Within && !there.Within));
                }
            );
}
