using System.Collections.Frozen;

namespace Traceability.Domain.Scanning;

/// <summary>A line of the printed action sheet.</summary>
public enum StationAction
{
    /// <summary>Begin the stage with the part (or the parts) on the bench.</summary>
    Start,

    /// <summary>The stage is finished: close it and have it judged.</summary>
    Done,

    /// <summary>Give the attempt up, with a reason.</summary>
    Abandon,

    /// <summary>Turn to the next thing that is missing.</summary>
    Next,

    /// <summary>Turn to the thing before.</summary>
    Back,

    /// <summary>Answer no to what is asked.</summary>
    No,

    /// <summary>Turn to the first empty slot.</summary>
    Fit,

    /// <summary>Put the parts on the bench aside (and, on an empty bench, the instruments); what is open stays open.</summary>
    Clear,

    /// <summary>Sign out.</summary>
    SignOut,

    /// <summary>Begin one run for all the parts collected.</summary>
    LoadStart,

    /// <summary>The run is finished: close it for all its parts.</summary>
    LoadClose,

    /// <summary>Turn to the stage that was passed and may be run once more, such as a second cure.</summary>
    Again,

    /// <summary>Say what can be scanned now.</summary>
    Help,

    /// <summary>Explains why nothing is undone.</summary>
    Undo,

    /// <summary>Put a value right that was taken into the open attempt.</summary>
    Correct,

    /// <summary>The reason for a correction that is asked for most.</summary>
    Mistyped,
}

/// <summary>The words of the action sheet: printed as codes and typed as they are.</summary>
public static class StationActions
{
    private static readonly FrozenDictionary<string, StationAction> ByWord = new Dictionary<string, StationAction>
    {
        ["START"] = StationAction.Start,
        ["DONE"] = StationAction.Done,
        ["ABANDON"] = StationAction.Abandon,
        ["NEXT"] = StationAction.Next,
        ["BACK"] = StationAction.Back,
        ["NO"] = StationAction.No,
        ["FIT"] = StationAction.Fit,
        ["CLEAR"] = StationAction.Clear,
        ["OUT"] = StationAction.SignOut,
        ["LOAD-START"] = StationAction.LoadStart,
        ["LOAD-CLOSE"] = StationAction.LoadClose,
        ["AGAIN"] = StationAction.Again,
        ["HELP"] = StationAction.Help,
        ["UNDO"] = StationAction.Undo,
        ["CORRECT"] = StationAction.Correct,
        ["MISTYPED"] = StationAction.Mistyped,
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    /// <summary>All actions in the order of the sheet.</summary>
    public static IReadOnlyList<StationAction> All { get; } = Enum.GetValues<StationAction>();

    /// <summary>The word that stands for the action.</summary>
    public static string Word(this StationAction action) => ByWord.First(entry => entry.Value == action).Key;

    /// <summary>The action of a word in either case, or <see langword="null"/>.</summary>
    public static StationAction? FromWord(string word) => ByWord.TryGetValue(word, out var action) ? action : null;
}
