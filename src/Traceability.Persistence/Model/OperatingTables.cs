using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;

namespace Traceability.Persistence.Model;

/// <summary>
/// A signed-in person or instrument: the SHA-256 of the token (the token itself is known to its holder only) and how long it is good.
/// </summary>
public sealed class SignInSession
{
    public required string TokenHash { get; init; }

    public required Guid PersonId { get; init; }

    public required DateTimeOffset StartedAt { get; init; }

    public DateTimeOffset ExpiresAt { get; set; }
}

/// <summary>
/// A PIN tried at a badge or from an address. It counts as wrong unless it is taken away again; <c>Judged</c> once it is known to be wrong.
/// </summary>
public sealed record PinTry(Guid Id, string Place, DateTimeOffset TriedAt, bool Judged);

/// <summary>
/// The answer to a command that came with an idempotency key, so that the same command writes once. Keys belong to their caller: a person,
/// or the token of an instrument. No secret is in the hash, and the body is empty where the answer held one.
/// </summary>
public sealed record IdempotentAnswer(string Caller, string Key, string RequestHash, int Status, string Body, DateTimeOffset RecordedAt);

/// <summary>The bytes of evidence and certificates, once per content.</summary>
public sealed record StoredFile(string Sha256, byte[] Bytes);

/// <summary>
/// Where a person left off at the screen of a station, so that nothing typed is lost by a reload or another instance of the service.
/// </summary>
public sealed class StationScreen
{
    public required string ScreenId { get; init; }

    public required string Session { get; set; }

    public DateTimeOffset ChangedAt { get; set; }
}

/// <summary>A setting of the workshop: its name, its time zone, whether it holds demonstration data.</summary>
public sealed class WorkshopSetting
{
    public required string Name { get; init; }

    public required string Value { get; set; }
}

internal static class OperatingTables
{
    public static void Configure(ModelBuilder model)
    {
        model.Entity<SignInSession>().ToTable("sign_in_sessions").HasKey(s => s.TokenHash);
        model.Entity<SignInSession>().HasIndex(s => s.PersonId);
        model.Entity<PinTry>().ToTable("pin_tries").HasKey(t => t.Id);
        model.Entity<PinTry>().Property(t => t.Id).ValueGeneratedNever();
        model.Entity<PinTry>().HasIndex(t => new { t.Place, t.TriedAt });
        model.Entity<PinTry>().HasIndex(t => t.TriedAt);
        model.Entity<IdempotentAnswer>().ToTable("idempotent_answers").HasKey(a => new { a.Caller, a.Key });
        model.Entity<StoredFile>().ToTable("stored_files").HasKey(f => f.Sha256);
        model.Entity<StationScreen>().ToTable("station_screens").HasKey(s => s.ScreenId);
        model.Entity<WorkshopSetting>().ToTable("workshop_settings").HasKey(s => s.Name);
        model.Entity<DataProtectionKey>().ToTable("data_protection_keys");
    }
}
