using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.ClimateSoak;

/// <summary>
/// Saturation vapour pressure of pure water, hPa. Several formulas are in use and differ by a few tenths of a percent, so a record
/// names the one it used.
/// </summary>
/// <remarks>Checks: published values D1a to D1f, and the handbook values of <c>VapourPressureHandbookTests</c>.</remarks>
public static class SaturationVapourPressure
{
    private static readonly double[] If97 =
    [
        0.11670521452767e4,
        -0.72421316703206e6,
        -0.17073846940092e2,
        0.12020824702470e5,
        -0.32325550322333e7,
        0.14915108613530e2,
        -0.48232657361591e4,
        0.40511340542057e6,
        -0.23855557567849,
        0.65017534844798e3,
    ];

    /// <summary>Over liquid water by the formula named, hPa.</summary>
    /// <param name="formula">The formula.</param>
    /// <param name="temperatureC">t, °C, inside the range of the formula.</param>
    public static double OverWaterHpa(VapourFormula formula, double temperatureC) =>
        formula switch
        {
            VapourFormula.Magnus => MagnusOverWaterHpa(temperatureC),
            VapourFormula.Sonntag => SonntagOverWaterHpa(temperatureC),
            VapourFormula.HylandWexler => HylandWexlerOverWaterHpa(temperatureC),
            VapourFormula.IapwsIf97 => IapwsIf97Hpa(temperatureC),
            VapourFormula.WagnerPruss => WagnerPrussHpa(temperatureC),
            _ => throw new ArgumentOutOfRangeException(nameof(formula), formula, "is no known formula"),
        };

    /// <summary>Magnus: e = 6.112 exp(17.62 t / (243.12 + t)). Fitted for -45 to 60 °C; taken from -100 to 100 °C.</summary>
    /// <param name="temperatureC">t, °C.</param>
    /// <remarks>Source: WMO-No. 8, annex 4.B. 0.28 % low at 20 °C.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside -100 to 100 °C, or NaN.</exception>
    public static double MagnusOverWaterHpa(double temperatureC) =>
        6.112 * Math.Exp(17.62 * Require.Within(temperatureC, -100, 100) / (243.12 + temperatureC));

    /// <summary>Magnus over ice: e = 6.112 exp(22.46 t / (272.62 + t)). Fitted for -65 to 0 °C; taken from -100 to 0.01 °C.</summary>
    /// <param name="temperatureC">t, °C.</param>
    /// <remarks>Source: WMO-No. 8, annex 4.B.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside -100 to 0.01 °C, or NaN.</exception>
    public static double MagnusOverIceHpa(double temperatureC) =>
        6.112 * Math.Exp(22.46 * Require.Within(temperatureC, -100, 0.01) / (272.62 + temperatureC));

    /// <summary>Sonntag: ln e = -6096.9385/T + 16.635794 - 2.711193e-2 T + 1.673952e-5 T^2 + 2.433502 ln T, -100 to 100 °C.</summary>
    /// <param name="temperatureC">t, °C; T = t + 273.15 K.</param>
    /// <remarks>Source: Sonntag, Z. Meteorol. 70 (1990) 340, ITS-90, from memory.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside -100 to 100 °C, or NaN.</exception>
    public static double SonntagOverWaterHpa(double temperatureC)
    {
        var kelvin = Kelvin(temperatureC, -100, 100);
        return Math.Exp(
            -6096.9385 / kelvin + 16.635794 - 2.711193e-2 * kelvin + 1.673952e-5 * kelvin * kelvin + 2.433502 * Math.Log(kelvin)
        );
    }

    /// <summary>
    /// Sonntag over ice: ln e = -6024.5282/T + 24.721994 + 1.0613868e-2 T - 1.3198825e-5 T^2 - 0.49382577 ln T, -100 to 0.01 °C.
    /// </summary>
    /// <param name="temperatureC">t, °C; T = t + 273.15 K.</param>
    /// <remarks>Source: Sonntag, Z. Meteorol. 70 (1990) 340, ITS-90, from memory.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside -100 to 0.01 °C, or NaN.</exception>
    public static double SonntagOverIceHpa(double temperatureC)
    {
        var kelvin = Kelvin(temperatureC, -100, 0.01);
        return Math.Exp(
            -6024.5282 / kelvin + 24.721994 + 1.0613868e-2 * kelvin - 1.3198825e-5 * kelvin * kelvin - 0.49382577 * Math.Log(kelvin)
        );
    }

    /// <summary>
    /// Hyland and Wexler: ln e(Pa) = a/T + b + c T + d T^2 + f T^3 + g ln T. Fitted for 0 to 200 °C; taken from -50 °C.
    /// </summary>
    /// <param name="temperatureC">t, °C; T = t + 273.15 K.</param>
    /// <remarks>Source: Hyland and Wexler 1983, as in the ASHRAE Handbook of Fundamentals, coefficients from memory.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside -50 to 200 °C, or NaN.</exception>
    public static double HylandWexlerOverWaterHpa(double temperatureC)
    {
        var kelvin = Kelvin(temperatureC, -50, 200);
        return 0.01
            * Math.Exp(
                -5.8002206e3 / kelvin
                    + 1.3914993
                    - 4.8640239e-2 * kelvin
                    + 4.1764768e-5 * Math.Pow(kelvin, 2)
                    - 1.4452093e-8 * Math.Pow(kelvin, 3)
                    + 6.5459673 * Math.Log(kelvin)
            );
    }

    /// <summary>IAPWS-IF97, region 4, equation 30: the saturation line, 0 to 373.946 °C.</summary>
    /// <param name="temperatureC">t, °C; T = t + 273.15 K.</param>
    /// <remarks>Source: IAPWS R7-97(2012); its table 35 is checked by D1e-001 to D1e-003.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 373.946 °C, or NaN.</exception>
    public static double IapwsIf97Hpa(double temperatureC)
    {
        var kelvin = Kelvin(temperatureC, 0, 373.946);
        var n = If97;
        var theta = kelvin + n[8] / (kelvin - n[9]);
        var a = theta * theta + n[0] * theta + n[1];
        var b = n[2] * theta * theta + n[3] * theta + n[4];
        var c = n[5] * theta * theta + n[6] * theta + n[7];
        return 1e4 * Math.Pow(2 * c / (-b + Math.Sqrt(b * b - 4 * a * c)), 4);
    }

    /// <summary>
    /// Wagner and Pruss: ln(e/pc) = (Tc/T) (a1 x + a2 x^1.5 + a3 x^3 + a4 x^3.5 + a5 x^4 + a6 x^7.5), x = 1 - T/Tc, 0 to 373.946 °C.
    /// </summary>
    /// <param name="temperatureC">t, °C; T = t + 273.15 K.</param>
    /// <remarks>
    /// Source: Wagner and Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783, auxiliary equation of IAPWS-95, coefficients from memory.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 373.946 °C, or NaN.</exception>
    public static double WagnerPrussHpa(double temperatureC)
    {
        const double criticalK = 647.096,
            criticalHpa = 220_640;
        var kelvin = Kelvin(temperatureC, 0, 373.946);
        var x = 1 - kelvin / criticalK;
        return criticalHpa
            * Math.Exp(
                criticalK
                    / kelvin
                    * (
                        -7.85951783 * x
                        + 1.84408259 * Math.Pow(x, 1.5)
                        - 11.7866497 * Math.Pow(x, 3)
                        + 22.6807411 * Math.Pow(x, 3.5)
                        - 15.9618719 * Math.Pow(x, 4)
                        + 1.80122502 * Math.Pow(x, 7.5)
                    )
            );
    }

    private static double Kelvin(double temperatureC, double lowestC, double highestC) =>
        Require.Within(temperatureC, lowestC, highestC) + PhysicalConstants.ZeroCelsiusK;
}

/// <summary>The formulas for the saturation vapour pressure over water.</summary>
public enum VapourFormula
{
    /// <summary>Magnus form of WMO-No. 8.</summary>
    Magnus,

    /// <summary>Sonntag 1990.</summary>
    Sonntag,

    /// <summary>Hyland and Wexler 1983.</summary>
    HylandWexler,

    /// <summary>IAPWS-IF97, region 4.</summary>
    IapwsIf97,

    /// <summary>Wagner and Pruss, auxiliary equation.</summary>
    WagnerPruss,
}
