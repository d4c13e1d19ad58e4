using System.Globalization;

namespace Traceability.SeedScenario.History;

/// <summary>
/// Values that must fit each other: a current and the voltage that it leaves, a level and the calibration value stored after it.
/// </summary>
internal static class UnitValues
{
    private const double PhantomOhm = 3400;
    private const double ReferenceMvPa = 50.1;

    public static Dictionary<string, decimal> OnBoard(BoardSet b)
    {
        var number = int.Parse(b.Serial[3..], CultureInfo.InvariantCulture);
        return new(Phantom("boardSupplyCurrentMa", b.Serial, b.Faulty ? 5.61 : null)) { ["boardNumberInLot"] = number };
    }

    public static Dictionary<string, decimal> OnPhantom(Unit u, bool again) => Phantom("phantomCurrentMa", Occasion(u, again), null);

    /// <summary>Outputs beside that of the reference microphone, and what is stored in the unit for each pattern.</summary>
    public static Dictionary<string, decimal> Levels(Unit u, bool again)
    {
        var chance = new Chance("levels of " + Occasion(u, again));
        var reference = Rounded(chance.Near(ReferenceMvPa, 0.05));
        var values = new Dictionary<string, decimal> { ["referenceOutputMv"] = reference };
        foreach (
            var (pattern, nominalMvPa) in u.Model == "TARN-2"
                ? [("Omni", 11.0), ("Cardioid", 12.0), ("Eight", 10.0)]
                : new[] { ("Cardioid", 14.0) }
        )
        {
            var output = Rounded(chance.Near(nominalMvPa, 0.4));
            values[$"output{pattern}Mv"] = output;
            values[$"calibration{pattern}Db"] = Rounded(
                20 * Math.Log10((double)output * ReferenceMvPa / (double)reference / nominalMvPa) + chance.Near(0, 0.04)
            );
        }

        return values;
    }

    private static Dictionary<string, decimal> Phantom(string current, string whose, double? milliampere)
    {
        var chance = new Chance("phantom power of " + whose);
        var (shown, source) = (milliampere ?? chance.Near(3.2, 0.12), chance.Near(47.9, 0.1));
        return new()
        {
            [current] = Rounded(shown),
            ["phantomSourceV"] = Rounded(source),
            ["phantomTerminalV"] = Rounded(source - (shown + chance.Near(0, 0.02)) / 1000 * PhantomOhm),
        };
    }

    private static string Occasion(Unit u, bool again) => again ? u.Serial + " again" : u.Serial;

    private static decimal Rounded(double value) => (decimal)Math.Round(value, 2);
}
