using System.Security.Cryptography;
using System.Text;

namespace Traceability.Domain.Records;

/// <summary>Ids of what is known by its name alone.</summary>
public static class NamedSubject
{
    /// <summary>
    /// The id of a name of that sort: the first 128 bits of the SHA-256 of <c>sort/name</c>, marked as version 8 (RFC 9562, 5.8). The same
    /// name always has the same id. Check: <c>StandingCalibrationsTests</c>.
    /// </summary>
    public static Guid Of(SetupSort sort, string name)
    {
        var bytes = SHA256.HashData(Encoding.UTF8.GetBytes($"{sort}/{name}"))[..16];
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x80);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new Guid(bytes, bigEndian: true);
    }
}
