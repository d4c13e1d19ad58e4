using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Directions;

/// <summary>
/// A first-order directional pattern s(theta) = A + B cos(theta), A + B = 1.
/// </summary>
/// <remarks>
/// A = 1 omnidirectional, 0.5 cardioid, 0 figure of eight; A = 1/4 has the greatest directivity index, A = (sqrt(3)-1)/2 the greatest
/// front-to-back index. Source: Eargle, The Microphone Book, chapter 5, from memory. Checks: published values E8,
/// <c>PatternTableTests</c>.
/// </remarks>
public sealed record FirstOrderPattern
{
    /// <summary>A pattern by its pressure share.</summary>
    /// <param name="pressureShare">A; 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 1, or NaN.</exception>
    public FirstOrderPattern(double pressureShare) => A = Require.Within(pressureShare, 0, 1);

    /// <summary>A, share of pressure.</summary>
    public double A { get; }

    /// <summary>B = 1 - A, share of pressure gradient.</summary>
    public double B => 1 - A;

    /// <summary>Random energy efficiency, without unit: A^2 + B^2/3.</summary>
    public double RandomEnergyEfficiency => A * A + B * B / 3;

    /// <summary>Directivity index, dB: -10 lg of the random energy efficiency.</summary>
    public double DirectivityIndexDb => 0 - 10 * Math.Log10(RandomEnergyEfficiency);

    /// <summary>Distance factor, without unit: how much farther than an omnidirectional one for the same share of reverberation.</summary>
    public double DistanceFactor => 1 / Math.Sqrt(RandomEnergyEfficiency);

    /// <summary>Front-to-back index of the hemispheres, dB: 10 lg[(A^2 + A B + B^2/3) / (A^2 - A B + B^2/3)].</summary>
    public double UnidirectionalIndexDb => 10 * Math.Log10((A * A + A * B + B * B / 3) / (A * A - A * B + B * B / 3));

    /// <summary>Signed response at an angle, without unit.</summary>
    /// <param name="degrees">theta from the axis, degrees.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public double At(double degrees) => A + B * Math.Cos(Require.Finite(degrees) * Math.PI / 180);

    /// <summary>Level at an angle, dB re the axis; negative infinity in a null.</summary>
    /// <param name="degrees">theta from the axis, degrees.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public double LevelDb(double degrees) =>
        20
        * Math.Log10(
            Math.Abs(
                degrees % 180 == 90 ? A
                : degrees % 360 == 180 ? A - B
                : At(degrees)
            )
        );

    /// <summary>Level at the side, 90 degrees, dB re the axis.</summary>
    public double SideDb => LevelDb(90);

    /// <summary>Level at the back, 180 degrees, dB re the axis; negative infinity for the cardioid.</summary>
    public double BackDb => LevelDb(180);

    /// <summary>Angle of the null, degrees: arccos(-A/B). Null for a pattern without one (A above one half).</summary>
    public double? NullDegrees => A <= B ? Degrees(Math.Acos(-A / B)) : null;

    /// <summary>
    /// Full angle within which the level is at most 3 dB (a half of the power) down, degrees: 2 arccos((2^-1/2 - A)/B). Null when it
    /// never falls so far.
    /// </summary>
    public double? AcceptanceDegrees => (Math.Sqrt(0.5) - A) / B is >= -1 and <= 1 and var cosine ? Degrees(2 * Math.Acos(cosine)) : null;

    private static double Degrees(double radians) => radians * 180 / Math.PI;
}
