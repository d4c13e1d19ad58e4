using System.Globalization;

namespace Traceability.Domain.Stages.Methods;

/// <summary>A value that a method computed, with the digits to show and the evidence it came from.</summary>
public sealed record ComputedValue(string Characteristic, decimal Value, string Digits, Guid? EvidenceId)
{
    /// <summary>A value with so many decimals; null when it is no finite number that a decimal holds, and nothing is then stated.</summary>
    public static ComputedValue? Of(string characteristic, double? value, int decimals, Guid? evidenceId = null)
    {
        if (value is not { } number || !double.IsFinite(number) || Math.Abs(number) > 1e15)
        {
            return null;
        }

        var rounded = Math.Round((decimal)number, decimals, MidpointRounding.AwayFromZero);
        return new(
            characteristic,
            rounded,
            rounded.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture),
            evidenceId
        );
    }
}
