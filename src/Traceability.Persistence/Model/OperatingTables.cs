using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;

namespace Traceability.Persistence.Model;

/// <summary>A signed-in person or instrument: the SHA-256 of the token (the token itself is known to its holder only) and how long it is good.</summary>
public sealed class SignInSession
{
    public required string TokenHash { get; init; }

    public required Guid PersonId { get; init; }

    public required DateTimeOffset StartedAt { get; init; }

    public DateTimeOffset ExpiresAt { get; set; }
}

/// <summary>A sign-in that failed; enough of them in a row lock the badge for a while.</summary>
public sealed record SignInFailure(Guid Id, string Badge, DateTimeOffset FailedAt);

/// <summary>The answer to a command that came with an idempotency key, so that the same command writes once.</summary>
public sealed record IdempotentAnswer(string Key, string RequestHash, int Status, string Body, DateTimeOffset RecordedAt);

/// <summary>The bytes of evidence and certificates, once per content.</summary>
public sealed record StoredFile(string Sha256, byte[] Bytes);

/// <summary>Where a person left off at a station, so that nothing typed is lost by a reload or another instance of the service.</summary>
public sealed class StationSeat
{
    public required string SeatId { get; init; }

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
        model.Entity<SignInFailure>().ToTable("sign_in_failures").HasKey(f => f.Id);
        model.Entity<SignInFailure>().HasIndex(f => new { f.Badge, f.FailedAt });
        model.Entity<IdempotentAnswer>().ToTable("idempotent_answers").HasKey(a => a.Key);
        model.Entity<StoredFile>().ToTable("stored_files").HasKey(f => f.Sha256);
        model.Entity<StationSeat>().ToTable("station_seats").HasKey(s => s.SeatId);
        model.Entity<WorkshopSetting>().ToTable("workshop_settings").HasKey(s => s.Name);
        model.Entity<DataProtectionKey>().ToTable("data_protection_keys");
    }
}
