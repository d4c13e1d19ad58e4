using Traceability.Domain.Stages.AcousticTest.Directions;
using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Physics;

/// <summary>The table of first-order patterns in Eargle, The Microphone Book, chapter 5, from memory.</summary>
public class PatternTableTests
{
    private const string Table = "Eargle, The Microphone Book, chapter 5, table of first-order patterns, from memory";

    [Theory]
    [InlineData("cardioid", 0.5, 0.333, 4.8, 1.7, 131, -6)]
    [InlineData("supercardioid", 0.37, 0.268, 5.7, 1.9, 115, -8.6)]
    [InlineData("hypercardioid", 0.25, 0.250, 6.0, 2.0, 105, -12)]
    [InlineData("figure of eight", 0.0, 0.333, 4.8, 1.7, 90, double.NegativeInfinity)]
    [From(SourceKind.Printed, Table)]
    public void Printed_values_of_the_usual_patterns_are_met(
        string name,
        double a,
        double efficiency,
        double indexDb,
        double distance,
        double acceptance,
        double sideDb
    )
    {
        _ = name;
        FirstOrderPattern pattern = new(a);
        Assert.Equal(efficiency, pattern.RandomEnergyEfficiency, 0.0021);
        Assert.Equal(indexDb, Math.Round(pattern.DirectivityIndexDb, 1), 1e-9);
        Assert.Equal(distance, Math.Round(pattern.DistanceFactor, 1), 1e-9);
        Assert.Equal(acceptance, Math.Round(pattern.AcceptanceDegrees!.Value), 1e-9);
        Assert.Equal(sideDb, Math.Round(pattern.SideDb, 1), 0.051);
    }

    [Theory]
    [InlineData(0.5, 180)]
    [InlineData(0.37, 126)]
    [InlineData(0.25, 109)]
    [InlineData(0.0, 90)]
    [From(SourceKind.Printed, Table)]
    public void Nulls_lie_where_the_table_puts_them(double a, double degrees) =>
        Assert.Equal(degrees, new FirstOrderPattern(a).NullDegrees!.Value, 0.55);

    [Fact]
    [From(SourceKind.Definition, "a + (1 - a) cos of the angle with a = 1 and a = 0.5")]
    public void Omnidirectional_has_no_null_and_no_acceptance_angle()
    {
        Assert.Null(new FirstOrderPattern(1).NullDegrees);
        Assert.Null(new FirstOrderPattern(1).AcceptanceDegrees);
        Assert.Equal(double.NegativeInfinity, new FirstOrderPattern(0.5).BackDb);
    }
}
