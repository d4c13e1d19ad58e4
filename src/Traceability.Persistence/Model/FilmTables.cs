using Microsoft.EntityFrameworkCore;

namespace Traceability.Persistence.Model;

/// <summary>
/// One diaphragm with film of one lot: since when, by whom fitted, and everything that its verdicts came to so far, of itself and of what
/// it was inside at the time. Derived from the facts in the transaction that changes them, so that a lot of ten thousand diaphragms is
/// counted, not followed.
/// </summary>
public sealed class FilmFate
{
    public required Guid DiaphragmId { get; init; }

    public required Guid LotId { get; init; }

    /// <summary>When its film was fitted.</summary>
    public DateTimeOffset Since { get; set; }

    public required string Model { get; set; }

    /// <summary>Who fitted the film.</summary>
    public Guid FittedBy { get; set; }

    /// <summary>What it went through: most films go the same few ways, so the way is kept once.</summary>
    public Guid PathId { get; set; }

    /// <summary>
    /// When it first failed at each place and stage where it did, in the order of the path's faults; null when it never failed.
    /// </summary>
    public DateTimeOffset[]? FailedAt { get; set; }
}

/// <summary>
/// A way of films through the workshop, as <c>Domain/Quality/FilmLots/FilmPath</c> reads it, known by the digest of its body; never
/// changed.
/// </summary>
public sealed record KeptFilmPath(Guid Id, string Body);

/// <summary>Maps the tables that film lots are counted from.</summary>
internal static class FilmTables
{
    public static void Configure(ModelBuilder model)
    {
        var fate = model.Entity<FilmFate>();
        fate.ToTable("film_fates").HasKey(f => new { f.DiaphragmId, f.LotId });
        fate.HasIndex(f => f.Since);

        var path = model.Entity<KeptFilmPath>();
        path.ToTable("film_paths").HasKey(p => p.Id);
        path.Property(p => p.Id).ValueGeneratedNever();
        path.Property(p => p.Body).HasColumnType("jsonb");
    }
}
