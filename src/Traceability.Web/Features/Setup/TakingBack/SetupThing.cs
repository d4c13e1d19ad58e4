using Traceability.Domain.Records;

namespace Traceability.Web.Features.Setup.TakingBack;

/// <summary>Something of the set-up, as decisions are taken about it.</summary>
/// <param name="Sort">What it is.</param>
/// <param name="SubjectId">What its facts are kept under.</param>
/// <param name="Code">Its code, as its label says it; of a kind with its list in front.</param>
/// <param name="Decision">The decision that counts; null when nothing was ever decided.</param>
public sealed record SetupThing(SetupSort Sort, Guid SubjectId, string Code, SetupDecision? Decision)
{
    /// <summary>Where it stands.</summary>
    public SetupState State => Decision?.State ?? SetupState.InUse;

    /// <summary>The words of addresses for what can be taken back, with what they are.</summary>
    public static readonly IReadOnlyDictionary<string, SetupSort> Sorts = new Dictionary<string, SetupSort>
    {
        ["stations"] = SetupSort.Station,
        ["instruments"] = SetupSort.Instrument,
        ["lots"] = SetupSort.Lot,
        ["carriers"] = SetupSort.Carrier,
        ["kinds"] = SetupSort.Kind,
        ["models"] = SetupSort.Model,
    };

    /// <summary>The part of an address that names one of them.</summary>
    public const string Address = "/{sort:regex(^(stations|instruments|lots|carriers|kinds|models)$)}/{code}";

    /// <summary>"station BENCH-1", as sentences name it.</summary>
    public string Name => NameOf(Sort, Code);

    /// <summary>Why its code cannot be given anew, where it was taken back as a mistake; null otherwise.</summary>
    public string? TakenWords => State == SetupState.Mistake ? TakingBackSentences.CodeWasTakenBack(Name, Decision!.Reason) : null;

    /// <summary>What it is and its code.</summary>
    public static string NameOf(SetupSort sort, string code) =>
        sort switch
        {
            SetupSort.Person => TakingBackSentences.NamedPerson(code),
            SetupSort.Station => TakingBackSentences.NamedStation(code),
            SetupSort.Instrument => TakingBackSentences.NamedInstrument(code),
            SetupSort.Lot => TakingBackSentences.NamedLot(code),
            SetupSort.Carrier => TakingBackSentences.NamedCarrier(code),
            SetupSort.Kind => TakingBackSentences.NamedKind(code),
            _ => TakingBackSentences.NamedModel(code),
        };
}

/// <summary>Where something of the set-up stands after a decision.</summary>
/// <param name="Code" example="BENCH-2">Its code.</param>
/// <param name="State" example="retired">Whether it is offered for new work.</param>
/// <param name="Reason" example="sold">Why it was decided so.</param>
public sealed record SetupThingAnswer(string Code, [property: Http.Answers.OneOf(typeof(SetupState))] string State, string Reason);

/// <summary>A decision about something of the set-up.</summary>
/// <param name="Reason" example="sold">Why, at most 400 characters.</param>
/// <param name="Of" example="lot">Of a kind: the list in which it stands; needed when several lists have its code.</param>
public sealed record SetupDecisionInput(string Reason, string? Of = null);
