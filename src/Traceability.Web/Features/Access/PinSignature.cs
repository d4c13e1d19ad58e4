using Traceability.Domain.Gates;
using Traceability.Domain.Work;

namespace Traceability.Web.Features.Access;

/// <summary>A decision is signed by typing the PIN once more.</summary>
public sealed class PinSignature(PinProof proof)
{
    /// <summary>Not bound to a page: what is bound can be shown again. Its underscore keeps it out of the hash of what was asked.</summary>
    public const string Field = "_Pin";

    /// <summary>
    /// Why this PIN does not sign for the person; null when it does. Asked before the command's transaction: the slow hash holds no
    /// connection, a wrong PIN is counted although nothing else is written, and what is kept for a repeated key is given to the right PIN
    /// only.
    /// </summary>
    public async Task<Refusal?> UnprovenAsync(Actor actor, string pin, CancellationToken cancellation) =>
        await proof.ProveAsync(actor.Badge, pin, cancellation) switch
        {
            { Proven: not null } => null,
            { Throttled: { Because: ThrottleReason.Badge } locked } => locked.ToRefusal(actor.Badge) with
            {
                Code = RefusalCode.TooManyWrongPins,
            },
            { Throttled: { } throttled } => throttled.ToRefusal(actor.Badge),
            _ => Refusal.Forbidden(AccessSentences.NotThePinOf(actor.Name), RefusalCode.WrongPin),
        };
}
