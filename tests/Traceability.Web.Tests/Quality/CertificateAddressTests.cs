using System.Text.Json;

namespace Traceability.Web.Tests.Quality;

/// <summary>
/// A certificate speaks in the workshop's name and leads back to it from outside; what would be printed for good and lead nowhere is not
/// issued.
/// </summary>
public sealed class CertificateAddressTests
{
    [Theory]
    [InlineData("")]
    [InlineData("http://127.0.0.1:5080")]
    [InlineData("http://localhost/")]
    [InlineData("http://[::1]:5080")]
    [InlineData("http://0.0.0.0:5080")]
    [InlineData("workshop.example")]
    [InlineData("ftp://workshop.example")]
    public async Task Without_an_address_that_is_reached_from_outside_no_certificate_is_issued(string address)
    {
        var workshop = new Workshop { Settings = { ["TRACEABILITY_PUBLIC_URL"] = address } };
        await workshop.InitializeAsync();
        try
        {
            var unit = await workshop.UnitAsync();
            var refused = (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Problem(409);
            Assert.Equal(address.Length > 0, refused.Contains("TRACEABILITY_PUBLIC_URL", StringComparison.Ordinal));
            Assert.Contains("No certificate was issued", refused, StringComparison.Ordinal);
            Assert.Empty((await workshop.GetAsync($"parts/{unit}/certificates")).Expect(200).List());
        }
        finally
        {
            await workshop.DisposeAsync();
        }
    }

    [Theory]
    [InlineData("The Lower Mill Workshop", "The Lower Mill Workshop")]
    [InlineData("", "")]
    public async Task The_masthead_is_the_workshop_s_name_and_never_the_program_s(string named, string said)
    {
        var workshop = new Workshop { Settings = { ["TRACEABILITY_WORKSHOP"] = named } };
        await workshop.InitializeAsync();
        try
        {
            var unit = await workshop.UnitAsync();
            (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
            using var client = await workshop.ClientAsync(Workshop.Quality);
            var twin = JsonSerializer.Deserialize<JsonElement>(
                await client.GetByteArrayAsync(new Uri($"/api/v1/parts/{unit}/certificates/1.json", UriKind.Relative))
            );
            using var pdf = UglyToad.PdfPig.PdfDocument.Open(
                await client.GetByteArrayAsync(new Uri($"/api/v1/parts/{unit}/certificates/1.pdf", UriKind.Relative))
            );
            var text = string.Join("\n", pdf.GetPages().Select(p => string.Join(' ', p.GetWords())));

            Assert.Equal(said, twin.Text("workshopName"));
            Assert.Contains(said, text, StringComparison.Ordinal);
            Assert.DoesNotContain("Traceability", text, StringComparison.Ordinal);
            Assert.Equal($"https://workshop.example/verify/{twin.Text("certificateId")}", twin.Text("verifyAddress"));
        }
        finally
        {
            await workshop.DisposeAsync();
        }
    }
}
