using Traceability.Domain.Gates;
using Traceability.Domain.Work;

namespace Traceability.Web.Features.Station.SignIn;

/// <summary>A decision is signed by typing the PIN once more.</summary>
public sealed class PinSignature(SignIn signIn)
{
    /// <summary>Not bound to a page: what is bound can be shown again. Its underscore keeps it out of the hash of what was asked.</summary>
    public const string Field = "_Pin";

    /// <summary>
    /// Why this PIN does not sign for the person; null when it does. Asked before the command's transaction, because a wrong PIN is kept as a
    /// failed sign-in although nothing else is written.
    /// </summary>
    public async Task<Refusal?> UnprovenAsync(Actor actor, string pin, CancellationToken cancellation) =>
        await signIn.ProveAsync(actor.Badge, pin, cancellation) switch
        {
            { Person: not null } => null,
            { LockedUntil: { } until } => Refusal.Forbidden(StationSentences.TooManyWrongPins(actor.Badge, until), RefusalCode.TooManyWrongPins),
            _ => Refusal.Forbidden(StationSentences.NotThePinOf(actor.Name), RefusalCode.WrongPin),
        };
}
