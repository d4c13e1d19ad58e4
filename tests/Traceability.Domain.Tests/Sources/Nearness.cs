namespace Traceability.Domain.Tests.Sources;

internal static class Nearness
{
    /// <summary>
    /// Fails unless the value lies within a relative distance of the expected one; exactly equal values always pass, infinities too.
    /// </summary>
    public static void Near(double expected, double actual, double relative)
    {
        double allowed = expected == 0 ? 1e-12 : relative * Math.Abs(expected);
        Assert.True(
            actual == expected || Math.Abs(actual - expected) <= allowed,
            FormattableString.Invariant($"expected {expected:R}, got {actual:R}")
        );
    }

    /// <summary>Fails unless the value, rounded as printed, is the printed one.</summary>
    public static void Printed(double expected, double actual, int decimals) => Assert.Equal(expected, Math.Round(actual, decimals), 12);
}
