using MathNet.Numerics.Distributions;
using MathNet.Numerics.RootFinding;
using Traceability.Domain.Quality.Distributions;
using Traceability.Domain.Values;

namespace Traceability.Domain.Quality.Sampling;

/// <summary>
/// What a sampling plan does: how probably a lot of given quality is accepted.
/// </summary>
/// <remarks>
/// Source: ISO 2859-1, chapter on operating characteristic curves; binomial and hypergeometric law. Checks: published values F13,
/// <c>SamplingTableTests</c>.
/// </remarks>
public static class OperatingCharacteristic
{
    /// <summary>Probability of acceptance for a running process: P(X at most Ac), X binomial with n and p.</summary>
    /// <param name="sampleSize">n; 1 or more.</param>
    /// <param name="accept">Ac; 0 to n.</param>
    /// <param name="nonconformingShare">p; 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double OfProcess(int sampleSize, int accept, double nonconformingShare)
    {
        CheckPlan(sampleSize, accept);
        return accept == sampleSize ? 1 : Binomial.CDF(Require.Within(nonconformingShare, 0, 1), sampleSize, accept);
    }

    /// <summary>Probability of acceptance for one lot: P(X at most Ac), X hypergeometric.</summary>
    /// <param name="lotSize">Items in the lot; n or more.</param>
    /// <param name="nonconforming">Nonconforming ones among them; 0 to the lot size.</param>
    /// <param name="sampleSize">n; 1 or more.</param>
    /// <param name="accept">Ac; 0 to n.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges.</exception>
    public static double OfLot(int lotSize, int nonconforming, int sampleSize, int accept)
    {
        CheckPlan(sampleSize, accept);
        ArgumentOutOfRangeException.ThrowIfLessThan(lotSize, sampleSize);
        Require.Within(nonconforming, 0, lotSize);
        // The library's probabilities divide binomial coefficients that no double holds: a lot of ten thousand came out as infinity over
        // infinity.
        return accept < sampleSize - (lotSize - nonconforming)
            ? 0
            : new FailureCountDistribution(sampleSize, lotSize - sampleSize, nonconforming).AtMost(accept, 0);
    }

    /// <summary>Share of nonconforming items at which the plan accepts with a given probability.</summary>
    /// <param name="sampleSize">n; 1 or more.</param>
    /// <param name="accept">Ac; 0 to n - 1 (with Ac = n everything is accepted).</param>
    /// <param name="acceptanceProbability">Probability; above 0, below 1. 0.95 gives the producer's, 0.10 the consumer's point.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges, or NaN.</exception>
    public static double QualityAt(int sampleSize, int accept, double acceptanceProbability)
    {
        CheckPlan(sampleSize, accept);
        ArgumentOutOfRangeException.ThrowIfEqual(accept, sampleSize);
        Require.Within(acceptanceProbability, 1e-9, 1 - 1e-9);
        return Brent.FindRoot(p => Binomial.CDF(p, sampleSize, accept) - acceptanceProbability, 0, 1, 1e-15, 500);
    }

    private static void CheckPlan(int sampleSize, int accept)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(sampleSize, 1);
        Require.Within(accept, 0, sampleSize);
    }
}
