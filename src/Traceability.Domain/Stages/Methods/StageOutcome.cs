namespace Traceability.Domain.Stages.Methods;

/// <summary>What a method arrived at. When <c>Unreadable</c> is set, no verdict can be given and the words say why.</summary>
public sealed record StageOutcome(IReadOnlyList<ComputedValue> Computed, IReadOnlyList<StageFinding> Findings, string? Unreadable = null)
{
    /// <summary>
    /// The moment from which later waits and windows count, where the evidence shows it; UTC. Null where they count from the closing.
    /// </summary>
    public DateTimeOffset? CountsFrom { get; init; }

    /// <summary>Nothing computed, nothing found.</summary>
    public static readonly StageOutcome Nothing = new([], []);

    /// <summary>The evidence cannot be judged.</summary>
    public static StageOutcome CannotJudge(string why) => new([], [], why);
}

/// <summary>Something a method found, in words for the builder; it may fail the attempt.</summary>
public sealed record StageFinding(string Text, bool Fails);
