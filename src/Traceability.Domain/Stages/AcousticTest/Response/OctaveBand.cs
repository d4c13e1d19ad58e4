using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.AcousticTest.Response;

/// <summary>A fractional-octave band with the exact frequencies of base ten.</summary>
/// <param name="MidHz">Exact mid-band frequency, Hz.</param>
/// <param name="LowerHz">Lower edge, Hz.</param>
/// <param name="UpperHz">Upper edge, Hz.</param>
/// <remarks>
/// G = 10^(3/10); 1/b octave, b odd: f = 1000 G^(x/b); b even: f = 1000 G^((2x+1)/(2b)); edges f G^(±1/(2b)). Source: IEC 61260-1:2014,
/// from memory. Checks: published values E3, <c>BandTableTests</c>.
/// </remarks>
public readonly record struct OctaveBand(double MidHz, double LowerHz, double UpperHz)
{
    /// <summary>The octave ratio G = 10^(3/10).</summary>
    public static double Ratio => Math.Pow(10, 0.3);

    /// <summary>Nominal frequencies of the one-third-octave bands -20 to 13 (10 Hz to 20 kHz), Hz: labels, not to compute with.</summary>
    /// <remarks>Source: IEC 61260-1:2014 annex E, ISO 266, from memory.</remarks>
    public static IReadOnlyList<double> NominalThirdsHz { get; } =
    [
        10,
        12.5,
        16,
        20,
        25,
        31.5,
        40,
        50,
        63,
        80,
        100,
        125,
        160,
        200,
        250,
        315,
        400,
        500,
        630,
        800,
        1000,
        1250,
        1600,
        2000,
        2500,
        3150,
        4000,
        5000,
        6300,
        8000,
        10_000,
        12_500,
        16_000,
        20_000,
    ];

    /// <summary>Band x of the 1/b-octave bands.</summary>
    /// <param name="index">x; 0 is the band at 1 kHz, for even b the one whose lower edge is 1 kHz. -200 to 200.</param>
    /// <param name="perOctave">b; 1 to 96.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside these ranges.</exception>
    public static OctaveBand At(int index, int perOctave)
    {
        Require.Within(index, -200, 200);
        Require.Within(perOctave, 1, 96);
        var exponent = perOctave % 2 == 1 ? (double)index / perOctave : (2.0 * index + 1) / (2 * perOctave);
        var mid = 1000 * Math.Pow(Ratio, exponent);
        var half = Math.Pow(Ratio, 1 / (2.0 * perOctave));
        return new(mid, mid / half, mid * half);
    }

    /// <summary>The one-third-octave band of a nominal frequency; null for a frequency that is no label from 10 Hz to 20 kHz.</summary>
    /// <param name="nominalHz">Nominal frequency, Hz.</param>
    public static OctaveBand? OfNominalThird(double nominalHz)
    {
        for (var i = 0; i < NominalThirdsHz.Count; i++)
            if (NominalThirdsHz[i] == nominalHz)
                return At(i - 20, 3);
        return null;
    }
}
