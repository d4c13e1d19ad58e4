using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Features.Access;

/// <summary>
/// Which PINs may be chosen. Digits in a row, which anybody tries first, are left to the demonstration, whose PINs everybody knows anyway.
/// </summary>
public sealed class PinRules(WorkshopNotice workshop)
{
    /// <summary>What is wrong with a chosen PIN; null when it may be set.</summary>
    public async Task<Refusal?> ProblemAsync(string field, string pin, CancellationToken cancellation) =>
        !PinDigits.Are(pin) ? Refusal.Invalid(field, AccessSentences.PinHasToDigits)
        : PinDigits.AreInARow(pin) && !(await workshop.ReadAsync(cancellation)).Demo
            ? Refusal.Invalid(field, AccessSentences.PinIsTheFirstToBeTried)
        : null;
}
