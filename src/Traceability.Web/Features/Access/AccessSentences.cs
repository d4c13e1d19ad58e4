using Traceability.Domain.Values;

namespace Traceability.Web.Features.Access;

/// <summary>What is said of badges, PINs and one-time codes. Their words are in <c>AccessSentences.resx</c>.</summary>
internal static class AccessSentences
{
    private static readonly TextFile Words = new(typeof(AccessSentences));

    internal static string BadgeAndPinDoNotBelongTogether => Words.Say();

    internal static string AccessWasEnded(string reason) => Words.Say([reason]);

    internal static string NotThePinOf(string person) => Words.Say([person]);

    internal static string TooManyWrongPins(string badge, DateTimeOffset until) => Words.Say([badge, until]);

    internal static string TooManyWrongPinsFromHere(DateTimeOffset until) => Words.Say([until]);

    internal static string TooManyAtOnce => Words.Say();
    internal static string BadgeAndCodeDoNotBelongTogether => Words.Say();
    internal static string SendTheCodeOrThePin => Words.Say();
    internal static string ThePinWasChangedMeanwhile => Words.Say();
    internal static string PinHasToDigits => Words.Say();
    internal static string PinIsTheFirstToBeTried => Words.Say();
}
