using System.Runtime.CompilerServices;

namespace Traceability.Domain.Values;

/// <summary>Guards that also catch NaN, which passes every "less than" comparison unseen.</summary>
internal static class Require
{
    public static double Finite(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, value, "must be a finite number");

    public static double Positive(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value) && value > 0 ? value : throw new ArgumentOutOfRangeException(name, value, "must be greater than zero");

    public static double NotNegative(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value) && value >= 0 ? value : throw new ArgumentOutOfRangeException(name, value, "must not be negative");

    public static double Within(
        double value,
        double lowest,
        double highest,
        [CallerArgumentExpression(nameof(value))] string? name = null
    ) =>
        value >= lowest && value <= highest
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"must lie between {lowest} and {highest}");

    public static double TemperatureC(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value) && value > -PhysicalConstants.ZeroCelsiusK
            ? value
            : throw new ArgumentOutOfRangeException(name, value, "must be a temperature above absolute zero");

    public static double PoissonRatio(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value is > -1 and <= 0.5
            ? value
            : throw new ArgumentOutOfRangeException(name, value, "must be a Poisson ratio, above -1 and at most 0.5");
}
