using MathNet.Numerics.LinearAlgebra;
using Traceability.Domain.Quality.Summaries;

namespace Traceability.Domain.Quality.Trends;

/// <summary>
/// Least squares y = B0 + B1 x1 + ... : drift over time, or of resonance from jig to ring.
/// </summary>
/// <remarks>
/// Predictors are centred and scaled before a QR factorisation, so that a year number beside a small ratio costs no digits.
/// Needs two values more than predictors, and predictors that do not repeat each other; otherwise "not enough data".
/// Source: NIST e-Handbook 4.4.3. Checked by F0-008 and NIST StRD Norris and Longley.
/// </remarks>
public static class LinearRegression
{
    /// <summary>A predictor whose scaled remainder after the ones before it is smaller than this repeats them.</summary>
    private const double Repeats = 1e-11;

    /// <summary>Fits a line through points.</summary>
    /// <param name="x">The predictor.</param>
    /// <param name="y">The values, in the same order.</param>
    public static Computed<LinearRegressionResult> Fit(IReadOnlyList<double> x, IReadOnlyList<double> y) => Fit([x], y);

    /// <summary>Fits a plane through points of several predictors.</summary>
    /// <param name="predictors">One column per predictor, each as long as <paramref name="y"/>.</param>
    /// <param name="y">The values.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no predictor, or one is not as long as <paramref name="y"/>.</exception>
    public static Computed<LinearRegressionResult> Fit(IReadOnlyList<IReadOnlyList<double>> predictors, IReadOnlyList<double> y)
    {
        int n = y.Count,
            slopes = predictors.Count,
            df = n - slopes - 1;
        ArgumentOutOfRangeException.ThrowIfZero(slopes, nameof(predictors));
        foreach (IReadOnlyList<double> column in predictors)
        {
            ArgumentOutOfRangeException.ThrowIfNotEqual(column.Count, n, nameof(predictors));
        }

        if (df < 1)
        {
            return new NotEnoughData("points", slopes + 2, n);
        }

        double[] means = [.. predictors.Select(Sample.Mean)];
        double[] scales = [.. predictors.Select(c => Math.Sqrt(Sample.SumOfSquares(c)))];
        int constant = scales.Count(s => s == 0);
        if (constant > 0)
        {
            return new NotEnoughData("predictors that vary", slopes, slopes - constant);
        }

        double yMean = Sample.Mean(y);
        Matrix<double> design = Matrix<double>.Build.Dense(n, slopes, (i, j) => (predictors[j][i] - means[j]) / scales[j]);
        Vector<double> target = Vector<double>.Build.Dense(n, i => y[i] - yMean);
        var qr = design.QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin);
        int independent = qr.R.Diagonal().Count(d => Math.Abs(d) > Repeats);
        if (independent < slopes)
        {
            return new NotEnoughData("predictors that do not repeat each other", slopes, independent);
        }

        Vector<double> scaled = qr.Solve(target);
        scaled += qr.Solve(target - design * scaled);
        Vector<double> residuals = target - design * scaled;
        double residualSquares = residuals.DotProduct(residuals),
            totalSquares = target.DotProduct(target);
        double variance = residualSquares / df;

        Matrix<double> inverse = qr.R.Inverse();
        Matrix<double> covariance = inverse.TransposeAndMultiply(inverse);
        double[] b = [.. scaled.Select((value, j) => value / scales[j])];
        double[] errors = [.. b.Select((_, j) => Math.Sqrt(variance * covariance[j, j]) / scales[j])];
        Vector<double> centre = Vector<double>.Build.Dense(slopes, j => means[j] / scales[j]);
        double intercept = yMean - b.Zip(means, (slope, mean) => slope * mean).Sum();
        double interceptError = Math.Sqrt(variance * (1.0 / n + centre * (covariance * centre)));
        return new LinearRegressionResult(
            [intercept, .. b],
            [interceptError, .. errors],
            Math.Sqrt(variance),
            totalSquares == 0 ? 0 : Math.Clamp(1 - residualSquares / totalSquares, 0, 1),
            df
        );
    }
}
