using Microsoft.AspNetCore.Identity;
using Traceability.Domain.Records;

namespace Traceability.Web.Features.Access;

/// <summary>
/// PINs are short, so their hash is slow. It is only computed under a permit of <see cref="PinHashLimiter"/> and never while a connection
/// is held.
/// </summary>
public static class PinHash
{
    private static readonly PasswordHasher<Person> Hasher = new();

    /// <summary>The hash that is compared when there is none, so that the answer takes as long as for somebody who is known.</summary>
    private static readonly string HashOfNobody = Of("0000");

    /// <summary>The salted hash of a PIN.</summary>
    public static string Of(string pin) => Hasher.HashPassword(null!, pin);

    /// <summary>Whether this is the PIN behind the hash; never where there is no hash.</summary>
    public static bool Fits(string? hash, string pin) =>
        Hasher.VerifyHashedPassword(null!, hash ?? HashOfNobody, pin) != PasswordVerificationResult.Failed && hash is not null;
}
