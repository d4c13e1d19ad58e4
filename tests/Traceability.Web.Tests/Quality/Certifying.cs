using System.Text.Json;
using UglyToad.PdfPig;

namespace Traceability.Web.Tests.Quality;

/// <summary>Certificates are issued, read and verified, units shipped.</summary>
internal static class Certifying
{
    public static Task<Reply> ShipAsync(this Workshop workshop, string unit) =>
        workshop.PostAsync($"parts/{unit}/shipments", new { customerReference = "ORDER-7" }, Workshop.Quality);

    public static async Task<JsonElement> IssueAsync(this Workshop workshop, string unit) =>
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);

    public static async Task<byte[]> BytesAsync(this Workshop workshop, string path)
    {
        using var client = await workshop.ClientAsync(Workshop.Quality);
        return await client.GetByteArrayAsync($"/api/v1/{path}");
    }

    public static string TextOf(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return string.Join("\n", document.GetPages().Select(p => string.Join(' ', p.GetWords())));
    }
}
