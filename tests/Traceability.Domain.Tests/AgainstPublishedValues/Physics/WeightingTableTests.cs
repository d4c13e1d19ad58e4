using Traceability.Domain.Stages.AcousticTest.Noise;
using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Physics;

/// <summary>
/// The A and C columns of IEC 61672-1:2013, table 3, from memory; each value is for the exact frequency of the nominal band.
/// </summary>
public class WeightingTableTests
{
    private static readonly (double NominalHz, double A, double C)[] Table =
    [
        (10, -70.4, -14.3),
        (12.5, -63.4, -11.2),
        (16, -56.7, -8.5),
        (20, -50.5, -6.2),
        (25, -44.7, -4.4),
        (31.5, -39.4, -3.0),
        (40, -34.6, -2.0),
        (50, -30.2, -1.3),
        (63, -26.2, -0.8),
        (80, -22.5, -0.5),
        (100, -19.1, -0.3),
        (125, -16.1, -0.2),
        (160, -13.4, -0.1),
        (200, -10.9, 0.0),
        (250, -8.6, 0.0),
        (315, -6.6, 0.0),
        (400, -4.8, 0.0),
        (500, -3.2, 0.0),
        (630, -1.9, 0.0),
        (800, -0.8, 0.0),
        (1000, 0.0, 0.0),
        (1250, 0.6, 0.0),
        (1600, 1.0, -0.1),
        (2000, 1.2, -0.2),
        (2500, 1.3, -0.3),
        (3150, 1.2, -0.5),
        (4000, 1.0, -0.8),
        (5000, 0.5, -1.3),
        (6300, -0.1, -2.0),
        (8000, -1.1, -3.0),
        (10000, -2.5, -4.4),
        (12500, -4.3, -6.2),
        (16000, -6.6, -8.5),
        (20000, -9.3, -11.2),
    ];

    public static TheoryData<double, double, double> Rows
    {
        get
        {
            var rows = new TheoryData<double, double, double>();
            foreach (var (nominal, a, c) in Table)
                rows.Add(nominal, a, c);
            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    [From(SourceKind.Printed, "IEC 61672-1:2013, table 3, column A, from memory")]
    public void The_analytic_A_curve_rounds_to_the_table(double nominalHz, double a, double c)
    {
        _ = c;
        Assert.Equal(a, Math.Round(FrequencyWeighting.ADb(Exact(nominalHz)), 1), 1e-9);
    }

    [Theory]
    [MemberData(nameof(Rows))]
    [From(SourceKind.Printed, "IEC 61672-1:2013, table 3, column C, from memory")]
    public void The_analytic_C_curve_rounds_to_the_table(double nominalHz, double a, double c)
    {
        _ = a;
        Assert.Equal(c, Math.Round(FrequencyWeighting.CDb(Exact(nominalHz)), 1), 1e-9);
    }

    public static bool AllValuesAreMet() =>
        Table.Length == 34 && Table.All(row => Math.Abs(FrequencyWeighting.ADb(Exact(row.NominalHz)) - row.A) <= 0.1);

    private static double Exact(double nominalHz) => 1000 * Math.Pow(10, Math.Round(10 * Math.Log10(nominalHz / 1000)) / 10);
}
