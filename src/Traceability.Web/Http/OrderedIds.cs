using System.Buffers.Binary;
using System.Security.Cryptography;

namespace Traceability.Web.Http;

/// <summary>
/// Ids of one command, UUIDv7 (RFC 9562, 5.7) with a counter in <c>rand_a</c> (6.2, method 1): the facts of a command keep the order in
/// which they were made, so that readings and fittings come back in the order in which they were entered.
/// </summary>
internal sealed class OrderedIds(DateTimeOffset now)
{
    private const int CounterBits = 12;

    private int count;

    public Guid Next()
    {
        Span<byte> bytes = stackalloc byte[16];
        RandomNumberGenerator.Fill(bytes);
        var milliseconds = now.ToUnixTimeMilliseconds() + (count >> CounterBits);
        var counter = count++ & ((1 << CounterBits) - 1);
        BinaryPrimitives.WriteInt64BigEndian(bytes, (milliseconds << 16) | 0x7000L | (long)counter);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new(bytes, bigEndian: true);
    }
}
