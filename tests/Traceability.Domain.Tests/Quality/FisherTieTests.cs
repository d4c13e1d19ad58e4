using System.Numerics;
using Traceability.Domain.Quality.Comparisons;

namespace Traceability.Domain.Tests.Quality;

/// <summary>
/// The two-sided p of Fisher's test sums every table no more probable than the one seen. Whether a table on the far side is exactly as
/// probable is a question of whole numbers, C(m, x) C(n, k - x), which logarithms of factorials answer only up to rounding.
/// </summary>
public class FisherTieTests
{
    /// <summary>
    /// By hand. 4 of 15 failed, 4 parts here: C(4,0) C(11,4) = C(4,2) C(11,2) = 330, then 44 and 1, of C(15,4) = 1365. 7 of 17 failed, 6
    /// parts here: C(6,0) C(11,7) = C(6,5) C(11,2) = 330, then 11, of C(17,7) = 19448.
    /// </summary>
    [Theory]
    [InlineData(0, 4, 4, 7, 330 + 330 + 44 + 1, 1365)]
    [InlineData(2, 2, 2, 9, 330 + 330 + 44 + 1, 1365)]
    [InlineData(0, 6, 7, 4, 330 + 330 + 11, 19448)]
    [InlineData(5, 1, 2, 9, 330 + 330 + 11, 19448)]
    public void A_table_as_probable_as_the_one_seen_counts_as_extreme(int a, int b, int c, int d, int ways, int ofAll)
    {
        Assert.Equal((double)ways / ofAll, FisherExact.TwoSidedP(new(a, b, c, d)).Value, 1e-12);
        Assert.Equal((double)ways / ofAll, FisherExact.Test(new(a, b, c, d)).Value.P, 1e-12);
    }

    /// <summary>
    /// Found by trying all margins up to 200 parts: 3 of 33 here and 11 of 33 here (27 of 128 failed) differ by 1.7 millionths in
    /// probability, 8 and 12 of 38 (35 of 132) by 3.3 millionths the other way round.
    /// </summary>
    [Theory]
    [InlineData(128, 33, 27, 3, 11)]
    [InlineData(132, 38, 35, 12, 8)]
    public void A_table_more_probable_by_millionths_does_not_count_as_extreme(int total, int here, int failed, int seen, int far)
    {
        BigInteger ways = Ways(total, here, failed, seen),
            farWays = Ways(total, here, failed, far);
        Assert.InRange((double)(farWays - ways) / (double)ways, 1e-6, 4e-6);

        Assert.Equal(ExactP(total, here, failed, seen), FisherExact.TwoSidedP(Table(total, here, failed, seen)).Value, 1e-10);
        Assert.Equal(ExactP(total, here, failed, far), FisherExact.TwoSidedP(Table(total, here, failed, far)).Value, 1e-10);
    }

    [Fact]
    public void Every_table_of_up_to_thirty_one_parts_has_the_p_of_whole_numbers()
    {
        for (int total = 2; total <= 31; total++)
        {
            for (int here = 1; here < total; here++)
            {
                for (int failed = 1; failed < total; failed++)
                {
                    for (int seen = Math.Max(0, failed - total + here); seen <= Math.Min(failed, here); seen++)
                    {
                        double exact = ExactP(total, here, failed, seen);
                        double p = FisherExact.TwoSidedP(Table(total, here, failed, seen)).Value;
                        Assert.True(Math.Abs(p - exact) <= 1e-10 * exact, $"{Table(total, here, failed, seen)}: {p} instead of {exact}");
                    }
                }
            }
        }
    }

    private static FailureTable Table(int total, int here, int failed, int seen) =>
        new(seen, here - seen, failed - seen, total - here - failed + seen);

    private static double ExactP(int total, int here, int failed, int seen)
    {
        BigInteger ways = Ways(total, here, failed, seen),
            extreme = 0;
        for (int x = Math.Max(0, failed - total + here); x <= Math.Min(failed, here); x++)
        {
            BigInteger other = Ways(total, here, failed, x);
            extreme += other <= ways ? other : 0;
        }

        return Math.Exp(BigInteger.Log(extreme) - BigInteger.Log(Choose(total, failed)));
    }

    private static BigInteger Ways(int total, int here, int failed, int x) => Choose(here, x) * Choose(total - here, failed - x);

    private static readonly Dictionary<(int N, int K), BigInteger> Chosen = [];

    private static BigInteger Choose(int n, int k) =>
        k < 0 || k > n ? 0
        : k == 0 ? 1
        : Chosen.TryGetValue((n, k), out var known) ? known
        : Chosen[(n, k)] = Choose(n, k - 1) * (n - k + 1) / k;
}
