using Traceability.Domain.Values;
using Traceability.Domain.Work;

namespace Traceability.Web.Features.Shared;

/// <summary>Reads the numbers of a form and keeps what is wrong with each, so that all are told at once.</summary>
public sealed class NumberReader
{
    private readonly Dictionary<string, string[]> errors = [];

    /// <summary>What is wrong, or null.</summary>
    public Refusal? Refusal => errors.Count == 0 ? null : new(RefusalKind.Invalid, SharedSentences.SomeNumbersCannotBeRead, [], errors);

    /// <summary>A number that must be there; 0 when it is wrong.</summary>
    public decimal Need(string field, string? text) => May(field, text ?? "") ?? 0;

    /// <summary>A number that may be left out.</summary>
    public decimal? May(string field, string? text)
    {
        if (text is null)
        {
            return null;
        }

        if (EnteredDecimal.TryParse(text, out var number, out var problem))
        {
            return number.Value;
        }

        errors[char.ToLowerInvariant(field[0]) + field[1..]] = [problem];
        return null;
    }
}
