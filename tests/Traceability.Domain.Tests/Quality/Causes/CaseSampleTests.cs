using CsCheck;
using Traceability.Domain.Quality.Causes;
using Traceability.Domain.Quality.Comparisons;

namespace Traceability.Domain.Tests.Quality.Causes;

public class CaseSampleTests
{
    private const int Most = 2000;

    [Fact]
    public void As_many_as_may_be_looked_at_are_all_looked_at() =>
        Assert.Equal(Enumerable.Range(0, Most), CaseSample.Rows(Parts(Most, i => i % 3 == 0), Most, byOutcome: true));

    [Fact]
    public void Never_more_than_asked_for_each_once_and_failed_ones_first_up_to_half()
    {
        Gen.Select(Gen.Int[2, 60], Gen.Bool.Array[0, 200], Gen.Bool)
            .Sample(
                (most, failed, byOutcome) =>
                {
                    var rows = CaseSample.Rows(Parts(failed.Length, i => failed[i]), most, byOutcome);
                    Assert.Equal(Math.Min(most, failed.Length), rows.Count);
                    Assert.Equal(rows.Distinct().Order(), rows);
                    if (byOutcome)
                    {
                        Assert.True(rows.Count(r => failed[r]) >= Math.Min(failed.Count(f => f), most / 2));
                        Assert.True(rows.Count(r => !failed[r]) >= Math.Min(failed.Count(f => !f), most - most / 2));
                    }
                }
            );
    }

    [Fact]
    public void The_same_parts_are_chosen_in_whatever_order_they_come()
    {
        var parts = Parts(9000, i => i % 11 == 0);
        var reversed = parts.Reverse().ToArray();
        Assert.Equal(
            CaseSample.Rows(parts, Most, byOutcome: true).Select(r => parts[r].Id).Order(),
            CaseSample.Rows(reversed, Most, byOutcome: true).Select(r => reversed[r].Id).Order()
        );
    }

    /// <summary>
    /// Ids that begin with a time, as the service gives them: of 20 weeks each gets its twentieth of the passed ones. Chi-squared on 19
    /// degrees of freedom is below 43.8 with probability 0.999 (R: qchisq(0.999, 19) = 43.82, from memory).
    /// </summary>
    [Fact]
    public void No_week_is_preferred()
    {
        var parts = Parts(20_000, _ => false);
        double expected = Most / 20.0;
        double chiSquared = CaseSample
            .Rows(parts, Most, byOutcome: true)
            .GroupBy(r => r / 1000)
            .Sum(g => Math.Pow(g.Count() - expected, 2) / expected);
        Assert.InRange(chiSquared, 2, 43.8);
    }

    /// <summary>
    /// 40 000 parts, one lot in ten, of which 12 % fail where 3 % of the others do: the odds ratio of all is within the sample's interval,
    /// although half of the sample failed.
    /// </summary>
    [Fact]
    public void The_odds_ratio_of_all_parts_lies_in_the_interval_of_those_looked_at()
    {
        var parts = Parts(40_000, i => i % 10 == 0 ? i / 10 % 25 < 3 : i % 100 % 33 == 1);
        var all = Table(parts, Enumerable.Range(0, parts.Length));
        var seen = Table(parts, CaseSample.Rows(parts, Most, byOutcome: true));
        Assert.Equal(Most / 2, seen.FailedHere + seen.FailedElsewhere);
        var interval = FisherExact.Test(seen, 0.95).Value.OddsRatioInterval;
        Assert.InRange(all.SampleOddsRatio, interval.Lower, interval.Upper);
        Assert.True(interval.Lower > 2, $"{interval.Lower}");
    }

    private static FailureTable Table((Guid Id, bool Failed)[] parts, IEnumerable<int> rows)
    {
        var counted = rows.ToLookup(r => (Here: r % 10 == 0, parts[r].Failed));
        int Count(bool here, bool failed) => counted[(here, failed)].Count();
        return new(Count(true, true), Count(true, false), Count(false, true), Count(false, false));
    }

    /// <summary>Version 7 ids a minute apart, their random bits from a fixed seed.</summary>
    private static (Guid Id, bool Failed)[] Parts(int count, Func<int, bool> failed)
    {
        var random = new Random(20261127);
        var start = new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero).ToUnixTimeMilliseconds();
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(i =>
                {
                    var bytes = new byte[16];
                    random.NextBytes(bytes);
                    System.Buffers.Binary.BinaryPrimitives.WriteInt64BigEndian(
                        bytes,
                        (start + i * 60_000L) << 16 | 0x7000 | (long)random.Next(0x1000)
                    );
                    return (new Guid(bytes, bigEndian: true), failed(i));
                }),
        ];
    }
}
