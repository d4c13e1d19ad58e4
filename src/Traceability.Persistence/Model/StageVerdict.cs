using Microsoft.EntityFrameworkCore;

namespace Traceability.Persistence.Model;

/// <summary>
/// An attempt that came to a verdict, as it counts now: with all corrections. Derived from the part's facts in the transaction that changes
/// them, so that a year of verdicts is counted from one table, without looking each up among readings and corrections. It holds what the
/// part and its attempt say once and for all beside what was decided.
/// </summary>
public sealed record StageVerdict(
    Guid AttemptId,
    Guid PartId,
    string Serial,
    string Kind,
    string Model,
    string Stage,
    int Number,
    string Place,
    DateTimeOffset BegunAt,
    DateTimeOffset EndedAt,
    bool First,
    bool Passed
);

/// <summary>Maps them. A period is always asked by when the attempts were begun.</summary>
internal static class VerdictTables
{
    public static void Configure(ModelBuilder model)
    {
        var verdict = model.Entity<StageVerdict>();
        verdict.ToTable("stage_verdicts").HasKey(v => v.AttemptId);
        verdict.Property(v => v.AttemptId).ValueGeneratedNever();
        verdict.HasIndex(v => v.PartId);
        verdict.HasIndex(v => v.BegunAt);
        verdict.HasIndex(v => new { v.Stage, v.BegunAt });
    }
}
