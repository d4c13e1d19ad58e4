using System.Diagnostics.CodeAnalysis;

namespace Traceability.Domain.Values;

/// <summary>A unit that a characteristic may have.</summary>
/// <param name="Code">As routes and clients write it: letters of any keyboard, case matters.</param>
/// <param name="Symbol">As it is printed.</param>
/// <param name="Quantity">What is measured in it.</param>
public sealed record Unit(string Code, string Symbol, string Quantity);

/// <summary>The closed list of units: a route that names another is refused, so that no reading is ever in doubt.</summary>
/// <remarks>Symbols as in ISO 80000 and common use (from memory). Checked by <c>UnitsTests</c>.</remarks>
public static class Units
{
    /// <summary>All units, by what they measure.</summary>
    public static IReadOnlyList<Unit> All { get; } =
    [
        new("Hz", "Hz", "frequency"),
        new("kHz", "kHz", "frequency"),
        new("N/m", "N/m", "tension"),
        new("N", "N", "force"),
        new("mN", "mN", "force"),
        new("Ncm", "N cm", "torque"),
        new("Pa", "Pa", "pressure"),
        new("hPa", "hPa", "pressure"),
        new("kPa", "kPa", "pressure"),
        new("MPa", "MPa", "stress"),
        new("GPa", "GPa", "stress"),
        new("pF", "pF", "capacitance"),
        new("nF", "nF", "capacitance"),
        new("Ohm", "Ω", "resistance"),
        new("kOhm", "kΩ", "resistance"),
        new("MOhm", "MΩ", "resistance"),
        new("GOhm", "GΩ", "resistance"),
        new("TOhm", "TΩ", "resistance"),
        new("Ohm/sq", "Ω/sq", "sheet resistance"),
        new("V", "V", "voltage"),
        new("mV", "mV", "voltage"),
        new("uV", "µV", "voltage"),
        new("A", "A", "current"),
        new("mA", "mA", "current"),
        new("uA", "µA", "current"),
        new("nA", "nA", "current"),
        new("pA", "pA", "current"),
        new("W", "W", "power"),
        new("mW", "mW", "power"),
        new("dB", "dB", "level"),
        new("dBV", "dBV", "level re 1 V"),
        new("dBV/Pa", "dB re 1 V/Pa", "sensitivity level"),
        new("dBA", "dB(A)", "weighted level"),
        new("mV/Pa", "mV/Pa", "sensitivity"),
        new("degC", "°C", "temperature"),
        new("K", "K", "temperature difference"),
        new("K/min", "K/min", "temperature rate"),
        new("pct", "%", "share"),
        new("ratio", "", "ratio"),
        new("count", "", "count"),
        new("deg", "°", "angle"),
        new("s", "s", "time"),
        new("min", "min", "time"),
        new("h", "h", "time"),
        new("d", "d", "time"),
        new("nm", "nm", "length"),
        new("um", "µm", "length"),
        new("mm", "mm", "length"),
        new("mg", "mg", "mass"),
        new("g", "g", "mass"),
        new("g/m2", "g/m²", "areal density"),
    ];

    private static readonly Dictionary<string, Unit> ByCode = All.ToDictionary(unit => unit.Code, StringComparer.Ordinal);

    /// <summary>The printed symbol of a unit's code, empty for what has none; a code that is not known stands for itself.</summary>
    public static string SymbolOf(string? code) => TryFind(code, out var known, out _) ? known.Symbol : code ?? "";

    /// <summary>The unit with this code; otherwise a message that names the one meant, or all there are.</summary>
    public static bool TryFind(string? code, [NotNullWhen(true)] out Unit? unit, [NotNullWhen(false)] out string? problem)
    {
        problem = null;
        if (ByCode.TryGetValue(code ?? "", out unit))
            return true;
        var meant = All.Where(known =>
                string.Equals(known.Code, code, StringComparison.OrdinalIgnoreCase) || known.Symbol == code && code.Length > 0
            )
            .Select(known => known.Code)
            .ToArray();
        problem =
            meant.Length > 0
                ? NumberTexts.NoSuchUnitWrite(code, string.Join(NumberTexts.JoinedByOr, meant))
                : NumberTexts.NoSuchUnit(code, string.Join(", ", All.Select(known => known.Code)));
        return false;
    }
}
