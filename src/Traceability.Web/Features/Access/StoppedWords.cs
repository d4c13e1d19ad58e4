using Traceability.Domain.Work;
using Traceability.Web.Features.Station;

namespace Traceability.Web.Features.Access;

/// <summary>How it is said that nothing was tried.</summary>
public static class StoppedWords
{
    /// <summary>As a refusal with the time to wait.</summary>
    public static Refusal ToRefusal(this Stopped stopped, string badge) =>
        Refusal.TooMany(
            stopped.Because switch
            {
                Closed.Badge => StationSentences.TooManyWrongPins(badge, stopped.Until),
                Closed.Address => StationSentences.TooManyWrongPinsFromHere(stopped.Until),
                _ => StationSentences.TooManyAtOnce,
            },
            stopped.Wait
        );

    /// <summary>The key of its words among those of the pages, with the moment of opening for {0}.</summary>
    public static string PageKey(this Stopped stopped) =>
        stopped.Because switch
        {
            Closed.Badge => "SignIn.Locked",
            Closed.Address => "SignIn.LockedHere",
            _ => "SignIn.Busy",
        };
}
