using Traceability.Domain.Quality.Outliers;
using Traceability.Domain.Tests.Sources;
using static Traceability.Domain.Tests.Sources.Nearness;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Statistics;

/// <summary>Tolerance factors where the printed tables end or follow another formula.</summary>
public class ToleranceFactorsAgainstIntegrals
{
    /// <summary>Few values, high shares. Printed tables have 185.617 for the first.</summary>
    [Theory]
    [InlineData(2, 0.99, 0.99, 185.616958603211)]
    [InlineData(2, 0.95, 0.95, 26.2596739830345)]
    [InlineData(2, 0.999, 0.999, 2465.64863284667)]
    [InlineData(2, 0.9, 0.75, 3.99248953420123)]
    [InlineData(3, 0.99, 0.99, 23.8955633493928)]
    [InlineData(3, 0.999, 0.9999, 314.361405781285)]
    [InlineData(4, 0.99, 0.999, 26.97909284363)]
    [From(SourceKind.Library, "mpmath 1.3, 40 digits, from the defining integral")]
    public void One_sided_tolerance_factors_of_two_to_four_values(int n, double share, double confidence, double factor) =>
        Near(factor, ToleranceFactors.OneSided(n, share, confidence), 1e-9);

    /// <summary>
    /// z_{0.975} sqrt((n - 1)(1 + 1/n)/chi2_{0.05; n-1}). Printed tables by Weissberg and Beatty's approximation differ: 3.379 for 10
    /// values.
    /// </summary>
    [Theory]
    [InlineData(5, 5.093525892)]
    [InlineData(10, 3.381913491)]
    [InlineData(20, 2.752284889)]
    [InlineData(30, 2.549635295)]
    [InlineData(50, 2.378769334)]
    [From(SourceKind.Library, "mpmath 1.3, Howe's formula itself")]
    public void Two_sided_tolerance_factors_are_those_of_Howes_formula(int n, double factor) =>
        Near(factor, ToleranceFactors.TwoSided(n, 0.95, 0.95), 1e-9);
}
