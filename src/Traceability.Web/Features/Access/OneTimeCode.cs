using System.Security.Cryptography;
using Traceability.Domain.Records;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Access;

/// <summary>
/// A code by which a person sets the own PIN, once, within a day. Sixteen letters are 69 bits, so that a fast hash keeps it safe; there is
/// no vowel among them, which spells no words, and none that is taken for a digit.
/// </summary>
public static class OneTimeCode
{
    private const string Letters = "BCDFGHJKMNPQRSTVWXZY";
    private const int Length = 16,
        Group = 4;

    private static readonly TimeSpan Lifetime = TimeSpan.FromHours(24);

    /// <summary>A fresh code, in groups of four letters.</summary>
    public static string New() =>
        string.Join('-', RandomNumberGenerator.GetString(Letters, Length).Chunk(Group).Select(g => new string(g)));

    /// <summary>The fact that it was given to a person; it holds the hash and not the code.</summary>
    public static PinCode Given(string code, Guid person, string reason, Stamp stamp) =>
        new(stamp.NewId(), person, HashOf(code), reason, stamp.RecordedAt + Lifetime, stamp.By, stamp.OccurredAt, stamp.RecordedAt);

    /// <summary>Whether this is the code that was given, and it can still be used.</summary>
    public static bool Fits(PinCode? given, string typed, DateTimeOffset now) =>
        given is not null && given.ExpiresAt > now && given.Hash == HashOf(typed);

    /// <summary>Typed in small letters, with blanks or without the hyphens, it is the same.</summary>
    private static string HashOf(string code) =>
        SessionAuthentication.HashOf(string.Concat(code.Where(char.IsAsciiLetter)).ToUpperInvariant());
}
