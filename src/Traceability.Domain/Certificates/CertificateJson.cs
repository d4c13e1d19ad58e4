using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;

namespace Traceability.Domain.Certificates;

/// <summary>The JSON twin of a certificate: the same document, for programs.</summary>
public static class CertificateJson
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        NumberHandling = JsonNumberHandling.Strict,
        PropertyNameCaseInsensitive = false,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        WriteIndented = true,
    };

    /// <summary>Writes the document as UTF-8 JSON; equal documents give equal bytes.</summary>
    /// <param name="document">The document.</param>
    /// <returns>The bytes served as the certificate's JSON.</returns>
    public static byte[] Write(CertificateDocument document) => JsonSerializer.SerializeToUtf8Bytes(document, Options);

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    /// <param name="utf8">UTF-8 JSON.</param>
    /// <returns>The document.</returns>
    /// <exception cref="JsonException">The text is not such a document, lacks a member or has one too many.</exception>
    public static CertificateDocument Read(ReadOnlySpan<byte> utf8) =>
        JsonSerializer.Deserialize<CertificateDocument>(utf8, Options) ?? throw new JsonException("The certificate is empty.");
}
