using System.Security.Cryptography;

namespace Traceability.Domain.Ledger;

/// <summary>A SHA-256 digest: 32 bytes, compared by content, printed as 64 lower-case hexadecimal digits.</summary>
public readonly struct Digest : IEquatable<Digest>
{
    /// <summary>How many bytes a digest has.</summary>
    public const int Length = SHA256.HashSizeInBytes;

    private readonly byte[]? _bytes;

    private Digest(byte[] bytes) => _bytes = bytes;

    /// <summary>32 zero bytes: what the first link of a chain is chained to.</summary>
    public static Digest Zero { get; } = new(new byte[Length]);

    /// <summary>The digest's bytes, to be read only.</summary>
    public ReadOnlySpan<byte> Bytes => _bytes ?? Zero._bytes;

    /// <summary>The digest held by these bytes.</summary>
    /// <exception cref="ArgumentException">They are not 32.</exception>
    public static Digest FromBytes(ReadOnlySpan<byte> bytes) =>
        bytes.Length == Length
            ? new(bytes.ToArray())
            : throw new ArgumentException($"A SHA-256 digest has {Length} bytes, not {bytes.Length}.", nameof(bytes));

    /// <summary>The digest written as hexadecimal digits in either case.</summary>
    /// <exception cref="FormatException">They are not 64 hexadecimal digits.</exception>
    public static Digest FromHex(string hex)
    {
        ArgumentNullException.ThrowIfNull(hex);
        return hex.Length == 2 * Length
            ? new(Convert.FromHexString(hex))
            : throw new FormatException($"A SHA-256 digest has {2 * Length} hexadecimal digits, not {hex.Length}.");
    }

    /// <summary>SHA-256 of a message.</summary>
    public static Digest Of(ReadOnlySpan<byte> message) => new(SHA256.HashData(message));

    /// <summary>SHA-256 of several pieces one after the other.</summary>
    internal static Digest Of(ReadOnlySpan<byte> first, ReadOnlySpan<byte> second, ReadOnlySpan<byte> third = default)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(first);
        hash.AppendData(second);
        hash.AppendData(third);
        return new(hash.GetHashAndReset());
    }

    /// <summary>A copy of the bytes, for storage.</summary>
    public byte[] ToArray() => Bytes.ToArray();

    /// <inheritdoc/>
    public bool Equals(Digest other) => Bytes.SequenceEqual(other.Bytes);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Digest other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => BitConverter.ToInt32(Bytes);

    /// <inheritdoc/>
    public override string ToString() => Convert.ToHexStringLower(Bytes);

    /// <summary>Same content.</summary>
    public static bool operator ==(Digest left, Digest right) => left.Equals(right);

    /// <summary>Other content.</summary>
    public static bool operator !=(Digest left, Digest right) => !left.Equals(right);
}
