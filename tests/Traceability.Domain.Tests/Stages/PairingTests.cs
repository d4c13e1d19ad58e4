using CsCheck;
using Traceability.Domain.Quality.Pairing;

namespace Traceability.Domain.Tests.Stages;

public class PairingTests
{
    private static readonly Gen<PairingCosts> Costs =
        from count in Gen.Int[0, 9]
        from cells in Gen.Double[0, 100].Array[count * count]
        from forbidden in Gen.Int[0, 3].Array[count * count]
        select PairingCosts.Of(count, (a, b) => forbidden[a * count + b] == 0 ? double.PositiveInfinity : cells[a * count + b]);

    /// <summary>Whole-number costs in a narrow range make ties and deep blossoms.</summary>
    private static readonly Gen<PairingCosts> Ties =
        from count in Gen.Int[2, 10]
        from cells in Gen.Int[0, 4].Array[count * count]
        select PairingCosts.Of(count, (a, b) => cells[a * count + b] == 4 ? double.PositiveInfinity : cells[a * count + b]);

    [Fact]
    public void The_best_pairing_is_that_of_a_search_through_all_of_them() => Costs.Sample(AgreesWithSearch, iter: 3000);

    [Fact]
    public void Ties_and_forbidden_pairs_do_not_mislead_it() => Ties.Sample(AgreesWithSearch, iter: 3000);

    [Fact]
    public void On_a_line_the_best_pairing_is_that_of_neighbours() =>
        Gen.Double[800, 1200]
            .Array[60]
            .Sample(
                hertz =>
                {
                    var sorted = hertz.Order().ToArray();
                    var neighbours = Enumerable.Range(0, 30).Sum(i => sorted[2 * i + 1] - sorted[2 * i]);
                    Assert.Equal(neighbours, BestPairing.Of(PairingCosts.ByDistance([.. hertz.Select(f => new[] { f })], [1])).Cost, 1e-6);
                },
                iter: 50
            );

    [Fact]
    public void Another_order_of_the_parts_costs_the_same() =>
        Gen.Select(Gen.Double[0, 10], Gen.Double[0, 10])
            .Array[14]
            .Sample(
                points =>
                {
                    double[][] parts = [.. points.Select(p => new[] { p.Item1, p.Item2 })];
                    double[][] turned = [.. parts[5..], .. parts[..5].Reverse()];
                    Assert.Equal(
                        BestPairing.Of(PairingCosts.ByDistance(parts, [1, 2])).Cost,
                        BestPairing.Of(PairingCosts.ByDistance(turned, [1, 2])).Cost,
                        1e-8
                    );
                },
                iter: 200
            );

    [Fact]
    public void The_best_pairing_of_a_crowd_is_never_dearer_than_the_greedy_one_and_uses_every_part_once() =>
        Gen.Select(Gen.Double[0, 10], Gen.Double[0, 10])
            .Array[120]
            .Sample(
                points =>
                {
                    var costs = PairingCosts.ByDistance([.. points.Select(p => new[] { p.Item1, p.Item2 })], [1, 1]);
                    var best = BestPairing.Of(costs);
                    Assert.True(best.Cost <= GreedyPairing.Of(costs).Cost + 1e-9);
                    Assert.Equal(Enumerable.Range(0, 120), best.Pairs.SelectMany(pair => new[] { pair.First, pair.Second }).Order());
                },
                iter: 5
            );

    [Fact]
    public void Of_an_odd_number_the_one_that_fits_worst_is_left_out()
    {
        var pairing = BestPairing.Of(
            PairingCosts.ByDistance(
                [
                    [900.0],
                    [905],
                    [970],
                    [911],
                    [913],
                ],
                [1]
            )
        );
        Assert.Equal([2], pairing.LeftOut);
        Assert.Equal([(0, 1), (3, 4)], pairing.Pairs.Select(pair => (pair.First, pair.Second)));
    }

    [Fact]
    public void Parts_that_may_not_pair_are_left_out_before_a_pair_is_lost()
    {
        // 0 fits 1 best, but then 2 and 3 stay alone: two dear pairs are better than a cheap one.
        var costs = PairingCosts.Of(
            4,
            (a, b) =>
                (a, b) switch
                {
                    (0, 1) => 1,
                    (0, 2) => 90,
                    (1, 3) => 90,
                    _ => double.PositiveInfinity,
                }
        );
        Assert.Equal(2, BestPairing.Of(costs).Pairs.Count);
        Assert.Equal([2, 3], GreedyPairing.Of(costs).LeftOut);
    }

    [Fact]
    public void No_parts_and_one_part_make_no_pair()
    {
        Assert.Empty(BestPairing.Of(PairingCosts.Of(0, (_, _) => 1)).Pairs);
        Assert.Equal([0], BestPairing.Of(PairingCosts.Of(1, (_, _) => 1)).LeftOut);
    }

    [Fact]
    public void Equal_parts_all_find_a_mate() => Assert.Equal(3, BestPairing.Of(PairingCosts.Of(7, (_, _) => 0)).Pairs.Count);

    [Fact]
    public void The_best_mates_come_best_first_and_forbidden_ones_not_at_all()
    {
        var costs = PairingCosts.ByDistance(
            [
                [900.0],
                [905],
                [970],
                [901],
                [899.5],
            ],
            [1],
            (a, b) => (a, b) is not (0, 4)
        );
        Assert.Equal([3, 1], BestMates.For(costs, 0, atMost: 2).Select(pair => pair.Second));
        Assert.DoesNotContain(BestMates.For(costs, 0), pair => pair.Second == 4);
        Assert.Throws<ArgumentOutOfRangeException>(() => BestMates.For(costs, 5));
    }

    [Fact]
    public void A_negative_cost_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => PairingCosts.Of(2, (_, _) => -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => PairingCosts.Of(2, (_, _) => double.NaN));
    }

    private static void AgreesWithSearch(PairingCosts costs)
    {
        var best = BestPairing.Of(costs);
        var (pairs, cost) = Search(costs, (1 << costs.Count) - 1);
        Assert.Equal(pairs, best.Pairs.Count);
        Assert.Equal(cost, best.Cost, 1e-6);
        Assert.Equal(costs.Count, 2 * best.Pairs.Count + best.LeftOut.Count);
    }

    private static (int Pairs, double Cost) Search(PairingCosts costs, int left)
    {
        if (left == 0)
            return (0, 0);
        var first = System.Numerics.BitOperations.TrailingZeroCount(left);
        left &= left - 1;
        var best = Search(costs, left);
        for (var other = first + 1; other < costs.Count; other++)
        {
            if ((left & (1 << other)) == 0 || double.IsInfinity(costs[first, other]))
                continue;
            var (pairs, cost) = Search(costs, left & ~(1 << other));
            if (pairs + 1 > best.Pairs || pairs + 1 == best.Pairs && cost + costs[first, other] < best.Cost)
                best = (pairs + 1, cost + costs[first, other]);
        }
        return best;
    }
}
