using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Noise;

/// <summary>
/// Frequency weightings A and C by their analytic formulas, dB.
/// </summary>
/// <remarks>
/// C(f) = 20 lg[f4^2 f^2 / ((f^2+f1^2)(f^2+f4^2))] - C1000, A(f) = 20 lg[f4^2 f^4 / ((f^2+f1^2) sqrt(f^2+f2^2) sqrt(f^2+f3^2)
/// (f^2+f4^2))] - A1000. The poles follow exactly from f_r = 1000 Hz, f_L = 10^1.5 Hz, f_H = 10^3.9 Hz, f_A = 10^2.45 Hz and D^2 = 1/2.
/// Source: IEC 61672-1:2013, annex E. Checks: published values E4, and the table of that standard in <c>WeightingTableTests</c>.
/// </remarks>
public static class FrequencyWeighting
{
    private static readonly (double F1, double F2, double F3, double F4) Poles = DerivePoles();

    /// <summary>A1000: level of the unnormalised A curve at 1 kHz, dB.</summary>
    public static double ANormalisationDb { get; } = UnnormalisedA(1000);

    /// <summary>C1000: level of the unnormalised C curve at 1 kHz, dB.</summary>
    public static double CNormalisationDb { get; } = UnnormalisedC(1000);

    /// <summary>A-weighting, dB.</summary>
    /// <param name="frequencyHz">f, Hz; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A frequency that is not positive, or NaN.</exception>
    public static double ADb(double frequencyHz) => UnnormalisedA(Require.Positive(frequencyHz)) - ANormalisationDb;

    /// <summary>C-weighting, dB.</summary>
    /// <param name="frequencyHz">f, Hz; greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A frequency that is not positive, or NaN.</exception>
    public static double CDb(double frequencyHz) => UnnormalisedC(Require.Positive(frequencyHz)) - CNormalisationDb;

    /// <summary>A-weighting of power, without unit: 10^(A/10). Zero at 0 Hz, so that it can be laid over a whole spectrum.</summary>
    /// <param name="frequencyHz">f, Hz; not negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">A negative frequency, or NaN.</exception>
    public static double APower(double frequencyHz) => Require.NotNegative(frequencyHz) == 0 ? 0 : Math.Pow(10, ADb(frequencyHz) / 10);

    private static double UnnormalisedC(double frequencyHz)
    {
        var f = frequencyHz * frequencyHz;
        return 20 * Math.Log10(Square(Poles.F4) * f / ((f + Square(Poles.F1)) * (f + Square(Poles.F4))));
    }

    private static double UnnormalisedA(double frequencyHz)
    {
        var f = frequencyHz * frequencyHz;
        return UnnormalisedC(frequencyHz) + 20 * Math.Log10(f / Math.Sqrt((f + Square(Poles.F2)) * (f + Square(Poles.F3))));
    }

    private static double Square(double x) => x * x;

    private static (double, double, double, double) DerivePoles()
    {
        const double reference = 1000;
        double low = Math.Pow(10, 1.5),
            high = Math.Pow(10, 3.9),
            middle = Math.Pow(10, 2.45),
            d = Math.Sqrt(0.5);
        var b = 1 / (1 - d) * (Square(reference) + Square(low) * Square(high) / Square(reference) - d * (Square(low) + Square(high)));
        var c = Square(low) * Square(high);
        var root = Math.Sqrt(b * b - 4 * c);
        var (narrow, wide) = ((3 - Math.Sqrt(5)) / 2, (3 + Math.Sqrt(5)) / 2);
        return (Math.Sqrt((-b - root) / 2), narrow * middle, wide * middle, Math.Sqrt((-b + root) / 2));
    }
}
