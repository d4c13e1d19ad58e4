using System.Text;

namespace Traceability.Domain.Tests.Evidence;

internal static class EvidenceText
{
    public static ReadOnlyMemory<byte> Utf8(this string text) => Encoding.UTF8.GetBytes(text);

    public static ReadOnlyMemory<byte> Lines(params string[] lines) => string.Join('\n', lines).Utf8();
}
