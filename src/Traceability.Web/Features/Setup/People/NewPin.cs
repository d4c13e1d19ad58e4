using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Features.Setup.People;

/// <summary>
/// Which PINs are taken. Digits in a row, which anybody tries first, are left to the demonstration, whose PINs everybody knows anyway.
/// </summary>
public sealed class NewPin(WorkshopNotice workshop)
{
    /// <summary>What is wrong with it; null when it is taken.</summary>
    public async Task<Refusal?> ProblemAsync(string field, string pin, CancellationToken cancellation) =>
        !PinDigits.Are(pin) ? Refusal.Invalid(field, SetupSentences.PinHasToDigits)
        : PinDigits.AreInARow(pin) && !(await workshop.ReadAsync(cancellation)).Demo
            ? Refusal.Invalid(field, SetupSentences.PinIsTheFirstToBeTried)
        : null;
}
