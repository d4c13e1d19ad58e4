namespace Traceability.SeedScenario.History;

/// <summary>What is particular about one piece of work; everything else follows from the route.</summary>
internal sealed record StageWork
{
    public static readonly StageWork Plain = new();

    /// <summary>Values that the scenario settles; the others lie around the nominal value.</summary>
    public IReadOnlyDictionary<string, decimal> Values { get; init; } = new Dictionary<string, decimal>();

    /// <summary>Parts to fit, by position.</summary>
    public IReadOnlyDictionary<string, string> Children { get; init; } = new Dictionary<string, string>();

    /// <summary>Responses by the name of the evidence.</summary>
    public IReadOnlyDictionary<string, string> Responses { get; init; } = new Dictionary<string, string>();

    /// <summary>The instrument to take for a kind, where it matters which.</summary>
    public IReadOnlyDictionary<string, string> Instruments { get; init; } = new Dictionary<string, string>();

    /// <summary>True when the slots are filled already, as after a rework.</summary>
    public bool SlotsAreFilled { get; init; }

    /// <summary>Fit only at this position, as after something was taken out.</summary>
    public string? OnlySlot { get; init; }

    /// <summary>What is meant to come out.</summary>
    public bool Fails { get; init; }

    public string? Note { get; init; }
}

/// <summary>What closing a stage came to.</summary>
internal sealed record Outcome(bool Passed, string? Nonconformity, IReadOnlyDictionary<string, string> ReadingIds);
