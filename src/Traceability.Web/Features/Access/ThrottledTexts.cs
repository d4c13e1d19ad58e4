using Traceability.Domain.Work;

namespace Traceability.Web.Features.Access;

/// <summary>Throttling in words.</summary>
public static class ThrottledTexts
{
    /// <summary>As a refusal with the time to wait.</summary>
    public static Refusal ToRefusal(this Throttled throttled, string badge) =>
        Refusal.TooMany(
            throttled.Because switch
            {
                ThrottleReason.Badge => AccessSentences.TooManyWrongPins(badge, throttled.Until),
                ThrottleReason.Address => AccessSentences.TooManyWrongPinsFromHere(throttled.Until),
                _ => AccessSentences.TooManyAtOnce,
            },
            throttled.Wait
        );

    /// <summary>The key of its words among those of the pages, with the moment of opening for {0}.</summary>
    public static string PageKey(this Throttled throttled) =>
        throttled.Because switch
        {
            ThrottleReason.Badge => "SignIn.Locked",
            ThrottleReason.Address => "SignIn.LockedHere",
            _ => "SignIn.Busy",
        };
}
