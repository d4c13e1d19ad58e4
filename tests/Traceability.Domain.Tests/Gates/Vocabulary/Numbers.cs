using System.Globalization;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;

namespace Traceability.Domain.Tests.Gates.Vocabulary;

/// <summary>Numbers as a builder would type them.</summary>
internal static class Numbers
{
    public static EnteredDecimal Typed(string digits) =>
        EnteredDecimal.TryParse(digits, out var number, out var problem) ? number : throw new ArgumentException(problem, nameof(digits));

    public static string Good(this Characteristic c) => Text(c.Nominal ?? c.Lower ?? c.Upper ?? 1m);

    public static string Bad(this Characteristic c) =>
        Text(c.Upper + 1 ?? c.Lower - 1 ?? throw new ArgumentException($"{c.Name} has no limit that could be missed", nameof(c)));

    public static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);
}
