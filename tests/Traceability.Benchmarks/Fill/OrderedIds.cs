using System.Buffers.Binary;

namespace Traceability.Benchmarks;

/// <summary>
/// Ids in the form of UUIDv7 (RFC 9562, 5.7) from a time and a counter alone: the same at every run, and rising nearly with time, as the
/// service's are.
/// </summary>
internal sealed class OrderedIds
{
    private long count;

    public Guid Next(DateTimeOffset at)
    {
        Span<byte> bytes = stackalloc byte[16];
        BinaryPrimitives.WriteInt64BigEndian(bytes, (at.ToUnixTimeMilliseconds() << 16) | 0x7000L);
        BinaryPrimitives.WriteInt64BigEndian(bytes[8..], ++count | long.MinValue);
        return new(bytes, bigEndian: true);
    }
}
