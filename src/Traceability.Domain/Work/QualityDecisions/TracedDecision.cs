using Traceability.Domain.Records;

namespace Traceability.Domain.Work.QualityDecisions;

/// <summary>
/// What one decision held after a trace: every hold that was put at one moment, by one person, for one reason. <c>Lifted</c> are those of
/// them that were lifted one by one since; they stay as they are.
/// </summary>
public sealed record TracedDecision(IReadOnlyList<Hold> Holds, IReadOnlySet<Guid> Lifted)
{
    /// <summary>Names the decision: the id of its first hold.</summary>
    public Guid Id => Holds[0].Id;

    /// <summary>Why it was held, with the trace that found it.</summary>
    public string Reason => Holds[0].Reason;

    /// <summary>The holds that are still in force.</summary>
    public IReadOnlyList<Hold> Open => [.. Holds.Where(h => !Lifted.Contains(h.Id))];

    /// <summary>Sorts holds into the decisions that put them, oldest first.</summary>
    /// <param name="holds">Holds that came of traces.</param>
    /// <param name="lifted">The ids of those that were lifted.</param>
    public static IReadOnlyList<TracedDecision> Of(IEnumerable<Hold> holds, IReadOnlySet<Guid> lifted) =>
        [
            .. holds
                .GroupBy(h => (h.RecordedAt, h.By, h.Reason))
                .Select(g => g.OrderBy(h => h.Id).ToArray())
                .OrderBy(g => g[0].RecordedAt)
                .ThenBy(g => g[0].Id)
                .Select(g => new TracedDecision(g, g.Select(h => h.Id).Where(lifted.Contains).ToHashSet())),
        ];
}
