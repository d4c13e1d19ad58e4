using Traceability.Domain.Stages.Diaphragm;
using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstPublishedValues.Physics;

/// <summary>Zeros of Bessel functions and what the textbooks make of them.</summary>
public class BesselZeroTableTests
{
    [Theory]
    [InlineData(0, 2.4048255577, 5.5200781103, 8.6537279129, 11.7915344391, 14.9309177086)]
    [InlineData(1, 3.8317059702, 7.0155866698, 10.1734681351, 13.3236919363, 16.4706300509)]
    [InlineData(2, 5.1356223018, 8.4172441404, 11.6198411721, 14.7959517824, 17.9598194950)]
    [InlineData(3, 6.3801618952, 9.7610231300, 13.0152007217, 16.2234661603, 19.4094152264)]
    [InlineData(4, 7.5883424345, 11.0647094885, 14.3725366716, 17.6159660498, 20.8269329569)]
    [InlineData(5, 8.7714838160, 12.3386041975, 15.7001740797, 18.9801338752, 22.2177998966)]
    [From(SourceKind.Printed, "Abramowitz and Stegun, Handbook of Mathematical Functions, table 9.5, from memory")]
    public void Zeros_agree_with_the_handbook_to_ten_decimals(int order, params double[] zeros) =>
        Assert.All(zeros.Index(), zero => Assert.Equal(zero.Item, MembraneModes.BesselZero(order, zero.Index + 1), 1e-9));

    [Theory]
    [InlineData(0, 1, 1.00)]
    [InlineData(1, 1, 1.59)]
    [InlineData(2, 1, 2.14)]
    [InlineData(0, 2, 2.30)]
    [InlineData(3, 1, 2.65)]
    [InlineData(1, 2, 2.92)]
    [InlineData(4, 1, 3.16)]
    [InlineData(2, 2, 3.50)]
    [InlineData(0, 3, 3.60)]
    [InlineData(5, 1, 3.65)]
    [From(
        SourceKind.Printed,
        "Fletcher and Rossing, The Physics of Musical Instruments, chapter 3, modes of an ideal membrane, from memory"
    )]
    public void Mode_ratios_round_to_those_of_the_textbook(int diameters, int circles, double ratio) =>
        Assert.Equal(ratio, Math.Round(MembraneModes.RatioToFundamental(diameters, circles), 2), 1e-9);

    [Fact]
    [From(SourceKind.Printed, "Lamb, Proc. R. Soc. A 98 (1920) 205, 0.6689 for the clamped plate, from memory")]
    public void The_clamped_plate_carries_the_air_that_Lamb_found() =>
        Assert.Equal(0.6689, AirLoadIntegrals.BaffledOneSide(ModeShape.ClampedPlate), 5e-5);

    /// <summary>End correction of a flanged pipe taken as a piston: 8/(3 pi) = 0.8488.</summary>
    [Fact]
    [From(SourceKind.Printed, "Rayleigh, Theory of Sound II, section 302, from memory")]
    public void The_piston_in_a_wall_carries_Rayleighs_mass() =>
        Assert.Equal(0.8488, AirLoadIntegrals.BaffledOneSide(ModeShape.RigidPiston), 5e-5);

    /// <summary>Inertia of a disc moving broadside, 8/3 rho a^3; over pi rho a^3 it is a Gamma.</summary>
    [Fact]
    [From(SourceKind.Printed, "Lamb, Hydrodynamics, section 102, from memory")]
    public void The_free_disc_carries_Lambs_mass() =>
        Assert.Equal(8.0 / 3 / Math.PI, AirLoadIntegrals.UnbaffledBothSides(ModeShape.RigidPiston), 1e-12);
}
