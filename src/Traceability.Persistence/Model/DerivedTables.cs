using Microsoft.EntityFrameworkCore;

namespace Traceability.Persistence.Model;

/// <summary>
/// Where a part stands now. Derived from its facts, written in the same transaction, and recomputed by <c>rebuild</c>.
/// The partial unique index on the carrier lets a carrier hold one part at a time.
/// </summary>
public sealed class PartStanding
{
    public required Guid PartId { get; init; }

    /// <summary>The revision of the route that it is on.</summary>
    public required Guid RouteId { get; set; }

    public string? Stage { get; set; }

    public required string State { get; set; }

    public bool Finished { get; set; }

    public string? CarrierCode { get; set; }

    public Guid? FittedInId { get; set; }

    public Guid? OpenAttemptId { get; set; }

    public Guid? OpenAttemptBy { get; set; }

    public DateTimeOffset ChangedAt { get; set; }
}

/// <summary>
/// One occurrence of an item inside a container: the fitting that placed the item, how deep, and from when until when.
/// Answers "everything in Y", "everything that contains X" and both "as it was on day Z" with one index.
/// The partial unique index lets a part be present in one parent at a time.
/// </summary>
public sealed class Containment
{
    public required Guid ContainerId { get; init; }

    public required Guid FittingId { get; init; }

    public required Guid ItemId { get; init; }

    public required bool ItemIsLot { get; init; }

    public required int Depth { get; init; }

    public required DateTimeOffset PresentFrom { get; init; }

    public DateTimeOffset? PresentUntil { get; set; }
}

/// <summary>The end of a subject's ledger chain; its row is the lock of everything that is written about the subject.</summary>
public sealed class LedgerHead
{
    public required Guid SubjectId { get; init; }

    public long Sequence { get; set; }

    public required string Hash { get; set; }
}

/// <summary>One accepted command on a subject: the canonical JSON of its facts, chained to the entry before by SHA-256.</summary>
public sealed record LedgerEntry(
    Guid Id,
    Guid SubjectId,
    long Sequence,
    string Kind,
    string Body,
    string PreviousHash,
    string Hash,
    DateTimeOffset RecordedAt
);

/// <summary>Maps the derived tables, the only ones on which the service may update rows.</summary>
internal static class DerivedTables
{
    public static void Configure(ModelBuilder model)
    {
        var standing = model.Entity<PartStanding>();
        standing.ToTable("part_standings").HasKey(s => s.PartId);
        standing.Property(s => s.PartId).ValueGeneratedNever();
        standing.HasIndex(s => s.CarrierCode).IsUnique().HasFilter("carrier_code is not null");
        standing.HasIndex(s => s.State);
        standing.HasIndex(s => new
        {
            s.RouteId,
            s.Finished,
            s.State,
        });
        standing.HasIndex(s => s.OpenAttemptBy).HasFilter("open_attempt_by is not null");

        var containment = model.Entity<Containment>();
        containment
            .ToTable("containments")
            .HasKey(c => new
            {
                c.ContainerId,
                c.FittingId,
                c.PresentFrom,
            });
        containment.HasIndex(c => new { c.ItemId, c.ItemIsLot });
        containment
            .HasIndex(c => c.ItemId)
            .IsUnique()
            .HasFilter("depth = 1 and not item_is_lot and present_until is null")
            .HasDatabaseName("ux_containments_one_parent");

        var head = model.Entity<LedgerHead>();
        head.ToTable("ledger_heads").HasKey(h => h.SubjectId);
        head.Property(h => h.SubjectId).ValueGeneratedNever();

        var entry = model.Entity<LedgerEntry>();
        entry.ToTable("ledger_entries").HasKey(e => e.Id);
        entry.Property(e => e.Id).ValueGeneratedNever();
        entry.HasIndex(e => new { e.SubjectId, e.Sequence }).IsUnique();
    }
}
