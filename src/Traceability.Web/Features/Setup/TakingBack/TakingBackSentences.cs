using Traceability.Domain.Values;

namespace Traceability.Web.Features.Setup.TakingBack;

/// <summary>What is said of taking something of the set-up back. Its words are in <c>TakingBackSentences.resx</c>.</summary>
internal static class TakingBackSentences
{
    private static readonly TextFile Words = new(typeof(TakingBackSentences));

    internal static string NamedPerson(string code) => Words.Say([code]);

    internal static string NamedStation(string code) => Words.Say([code]);

    internal static string NamedInstrument(string code) => Words.Say([code]);

    internal static string NamedLot(string code) => Words.Say([code]);

    internal static string NamedCarrier(string code) => Words.Say([code]);

    internal static string NamedKind(string code) => Words.Say([code]);

    internal static string NamedModel(string code) => Words.Say([code]);

    internal static string ThereIsNone(string name) => Words.Say([name]);

    internal static string SayWhyItIsTakenBack => Words.Say();

    internal static string IsInUseAlready(string name) => Words.Say([name]);

    internal static string IsRetiredAlready(string name, string reason) => Words.Say([name, reason]);

    internal static string IsTakenBackAlready(string name, string reason) => Words.Say([name, reason]);

    internal static string SomethingDependsOnIt(string name, string dependents) => Words.Say([name, dependents]);

    internal static string PartsLayInIt(int count, string serials) => Words.Say([count, serials]);

    internal static string PartsAreOfIt(int count, string serials) => Words.Say([count, serials]);

    internal static string AttemptsWereMadeThere(int count, string serials) => Words.Say([count, serials]);

    internal static string PartsWereMeasuredWithIt(int count, string serials) => Words.Say([count, serials]);

    internal static string StudiesMeasuredWithIt(int count, string numbers) => Words.Say([count, numbers]);

    internal static string TokensOpenIt(int count, string titles) => Words.Say([count, titles]);

    internal static string PartsContainIt(int count, string serials) => Words.Say([count, serials]);

    internal static string HoldsAreOnIt(int count, string reasons) => Words.Say([count, reasons]);

    internal static string ConcessionsAreForIt(int count, string numbers) => Words.Say([count, numbers]);

    internal static string NonconformitiesAreOnIt(int count, string codes) => Words.Say([count, codes]);

    internal static string CodeWasTakenBack(string name, string reason) => Words.Say([name, reason]);

    internal static string SayWhyTheNameWasWrong => Words.Say();

    internal static string IsCalledSoAlready(string name, string called) => Words.Say([name, called]);
}
