using Traceability.Domain.Values;

namespace Traceability.Web.Http;

/// <summary>
/// What is wrong with what a client sent, before anybody looked at what it means. The words are in <c>InputTexts.resx</c>.
/// </summary>
internal static class InputTexts
{
    private static readonly TextFile Words = new(typeof(InputTexts));

    internal static string CannotBeRead(string text, string kind) => Words.Say([text, kind]);

    internal static string IsMissingInTheQuery(string name) => Words.Say([name]);

    internal static string ABodyIsExpected => Words.Say();

    internal static string IsMissing(string names) => Words.Say([names]);

    internal static string ThereIsNoMember(string name) => Words.Say([name]);

    internal static string IsThereTwice(string name) => Words.Say([name]);

    internal static string MayNotBeNull(string name) => Words.Say([name]);

    internal static string IsSomethingElse(string place, string kind) => Words.Say([place, kind]);

    internal static string IsNestedTooDeeply => Words.Say();

    internal static string IsNotJson(string at) => Words.Say([at]);

    internal static string At(long line, long? position) => Words.Say([line, position]);

    internal static string TheBody => Words.Say();
    internal static string AText => Words.Say();
    internal static string AWholeNumber => Words.Say();
    internal static string ANumber => Words.Say();
    internal static string TrueOrFalse => Words.Say();
    internal static string AnId => Words.Say();
    internal static string ATime => Words.Say();
    internal static string ADay => Words.Say();
    internal static string AList => Words.Say();
    internal static string AnObject => Words.Say();

    internal static string OneOf(string words) => Words.Say([words]);

    internal static string ANumberIsExpected => Words.Say();
    internal static string ATimeIsExpected => Words.Say();
    internal static string NullStandsHere => Words.Say();

    internal static string ListHoldsNull(string name) => Words.Say([name]);

    internal static string TextIsTooLong(string name, int length, int most) => Words.Say([name, length, most]);

    internal static string HoldsNul(string name) => Words.Say([name]);

    internal static string IsNotUtf8 => Words.Say();
    internal static string CannotBeKept => Words.Say();
    internal static string IsNotWholeGzip => Words.Say();

    internal static string EncodingIsNotTaken(string encoding) => Words.Say([encoding]);

    internal static string NoSuchQueryName(string unknown, string known) => Words.Say([unknown, known]);

    internal static string NoSuchQueryNameAtAll(string unknown) => Words.Say([unknown]);
}
