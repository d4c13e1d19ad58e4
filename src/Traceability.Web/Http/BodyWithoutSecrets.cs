using System.Security.Cryptography;
using System.Text.Json;

namespace Traceability.Web.Http;

/// <summary>
/// The hash by which a repeated request is known: of its body as it was sent, without the PINs in it, which could be found by trying them
/// all.
/// </summary>
internal static class BodyWithoutSecrets
{
    private static readonly string[] Secrets = ["pin", "newPin"];
    private static readonly byte[] ByteOrderMark = [0xEF, 0xBB, 0xBF];

    public static async Task<string> HashAsync(HttpRequest request, CancellationToken cancellation)
    {
        if (!request.HasJsonContentType())
        {
            return Convert.ToHexStringLower(await SHA256.HashDataAsync(request.Body, cancellation));
        }

        using var body = new MemoryStream();
        await request.Body.CopyToAsync(body, cancellation);
        return HashOf(body.GetBuffer().AsSpan(0, (int)body.Length));
    }

    private static string HashOf(ReadOnlySpan<byte> body)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var json = body.StartsWith(ByteOrderMark) ? body[ByteOrderMark.Length..] : body;
        var kept = 0;
        try
        {
            var reader = new Utf8JsonReader(json);
            while (reader.Read())
            {
                if (
                    reader.TokenType != JsonTokenType.PropertyName
                    || !Secrets.Contains(reader.GetString(), StringComparer.OrdinalIgnoreCase)
                )
                {
                    continue;
                }

                hash.AppendData(json[kept..(int)reader.BytesConsumed]);
                reader.Read();
                reader.Skip();
                kept = (int)reader.BytesConsumed;
            }
        }
        catch (Exception unread) when (unread is JsonException or InvalidOperationException)
        {
            // Not to be read here, so it cannot be said what in it is secret: it is like no other request.
            return Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));
        }

        hash.AppendData(json[kept..]);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
