using Traceability.Domain.Records;
using Traceability.Domain.Values.Limits;

namespace Traceability.Domain.Gates;

/// <summary>The words that the contract and the pages use for states.</summary>
public static class Words
{
    /// <summary>The word for a part's state.</summary>
    public static string Of(PartState state) =>
        state switch
        {
            PartState.Ready => "ready",
            PartState.InWork => "in-work",
            PartState.Nonconforming => "nonconforming",
            PartState.OnHold => "on-hold",
            PartState.Finished => "finished",
            PartState.Fitted => "fitted",
            PartState.Shipped => "shipped",
            PartState.Scrapped => "scrapped",
            _ => throw new ArgumentOutOfRangeException(nameof(state)),
        };

    /// <summary>The part's state that a word stands for.</summary>
    public static PartState PartStateOf(string word) => Enum.GetValues<PartState>().First(s => Of(s) == word);

    /// <summary>The word for what a part is now.</summary>
    public static string Of(StandingCode code) =>
        code switch
        {
            StandingCode.InWork => "in-work",
            StandingCode.Waiting => "waiting",
            StandingCode.Blocked => "blocked",
            StandingCode.Held => "held",
            StandingCode.Quarantined => "quarantined",
            StandingCode.Finished => "finished",
            StandingCode.Fitted => "fitted",
            StandingCode.Stock => "stock",
            StandingCode.Shipped => "shipped",
            StandingCode.Returned => "returned",
            StandingCode.Scrapped => "scrapped",
            _ => throw new ArgumentOutOfRangeException(nameof(code)),
        };

    /// <summary>The word for a stage's state.</summary>
    public static string Of(StageState state) =>
        state switch
        {
            StageState.Passed => "passed",
            StageState.Open => "open",
            StageState.Waiting => "waiting",
            StageState.Blocked => "blocked",
            StageState.Later => "later",
            _ => throw new ArgumentOutOfRangeException(nameof(state)),
        };

    /// <summary>The word for a verdict.</summary>
    public static string Of(Verdict verdict) =>
        verdict switch
        {
            Verdict.Pass => "pass",
            Verdict.Fail => "fail",
            Verdict.Conditional => "conditional",
            _ => throw new ArgumentOutOfRangeException(nameof(verdict)),
        };

    /// <summary>The word for what limits and uncertainty say of a value.</summary>
    public static string Of(Conformity conformity) =>
        conformity switch
        {
            Conformity.Met => "met",
            Conformity.Conditional => "conditional",
            Conformity.NotMet => "not-met",
            _ => throw new ArgumentOutOfRangeException(nameof(conformity)),
        };

    /// <summary>The word for how a return came out.</summary>
    public static string Of(ReturnOutcomeKind kind) =>
        kind switch
        {
            ReturnOutcomeKind.Repaired => "repaired",
            ReturnOutcomeKind.NoFault => "no-fault",
            ReturnOutcomeKind.Scrapped => "scrapped",
            ReturnOutcomeKind.Unrepaired => "unrepaired",
            _ => throw new ArgumentOutOfRangeException(nameof(kind)),
        };

    /// <summary>The word for an instrument's state.</summary>
    public static string Of(InstrumentState state) =>
        state switch
        {
            InstrumentState.Usable => "usable",
            InstrumentState.Due => "due",
            InstrumentState.Held => "held",
            InstrumentState.Retired => "retired",
            _ => throw new ArgumentOutOfRangeException(nameof(state)),
        };
}
