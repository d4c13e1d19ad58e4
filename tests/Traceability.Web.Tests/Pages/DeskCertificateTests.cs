namespace Traceability.Web.Tests.Pages;

public sealed class DeskCertificateTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_certificate_and_a_shipment_by_page_store_the_same_facts_as_by_API()
    {
        var (byApi, byPage) = (await workshop.UnitAsync(), await workshop.UnitAsync());
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        (await workshop.PostAsync($"parts/{byApi}/certificates", new { }, Workshop.Quality)).Expect(201);
        var issued = (await desk.SendAsync($"/parts/{byPage}/certificate", "issue")).Expect(200);
        Assert.Contains("current", issued.Words, StringComparison.Ordinal);
        Assert.Equal(Plain(await workshop.LastAsync(byApi)), Plain(await workshop.LastAsync(byPage)));

        (await workshop.PostAsync($"parts/{byApi}/shipments", new { customerReference = "ORDER-7" }, Workshop.Quality)).Expect(201);
        (await desk.SendAsync($"/parts/{byPage}/certificate", "ship", ("customerReference", "ORDER-7"))).Expect(200);
        Assert.Equal(await workshop.LastAsync(byApi), await workshop.LastAsync(byPage));
        Assert.Equal("shipped", await workshop.StateOfAsync(byPage));
    }

    [Fact]
    public async Task What_is_missing_is_said_and_nothing_can_be_issued()
    {
        var serial = await workshop.RegisterAsync("unit");
        var page = (await (await DeskClient.SignInAsync(workshop, Workshop.Quality)).GetAsync($"/parts/{serial}/certificate")).Expect(200);
        Assert.Contains("not passed: Assembly", page.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("value=\"issue\"", page.Html, StringComparison.Ordinal);
        Assert.Contains(
            "Certificates are issued for finished units",
            (
                await (await DeskClient.SignInAsync(workshop, Workshop.Builder)).GetAsync(
                    $"/parts/{await workshop.MountAsync()}/certificate"
                )
            ).Words,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Anybody_is_told_whether_a_certificate_is_genuine_and_nothing_private()
    {
        var serial = await workshop.UnitAsync();
        var issued = (await workshop.PostAsync($"parts/{serial}/certificates", new { }, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync($"parts/{serial}/shipments", new { customerReference = "SECRET-ORDER" }, Workshop.Quality)).Expect(201);
        var anybody = await AnybodyAsync();
        var page = (await anybody.GetAsync($"/verify/{issued.Text("certificateId")}")).Expect(200);
        Assert.Contains("Genuine and current", page.Words, StringComparison.Ordinal);
        Assert.Contains(serial, page.Words, StringComparison.Ordinal);
        foreach (var hidden in new[] { "SECRET-ORDER", "Bea Builder", "Quinn Quality", "14.20" })
        {
            Assert.DoesNotContain(hidden, page.Words, StringComparison.Ordinal);
        }

        Assert.Contains(
            "Not confirmed",
            (await anybody.GetAsync("/verify/AAAAAAAAAAAAAAAAAAAA")).Expect(404).Words,
            StringComparison.Ordinal
        );
        Assert.Equal(
            $"/verify/{issued.Text("certificateId")}",
            (await anybody.GetAsync($"/verify?id={issued.Text("certificateId")}")).Path
        );
    }

    [Fact]
    public async Task The_file_itself_is_checked_byte_for_byte()
    {
        var serial = await workshop.UnitAsync();
        (await workshop.PostAsync($"parts/{serial}/certificates", new { }, Workshop.Quality)).Expect(201);
        var pdf = await (await workshop.ClientAsync(Workshop.Quality)).GetByteArrayAsync(
            new Uri($"/api/v1/parts/{serial}/certificate.pdf", UriKind.Relative)
        );
        var anybody = await AnybodyAsync();
        Assert.Contains(
            "byte for byte, the one that was issued",
            (await anybody.UploadAsync("/verify", "file", pdf)).Expect(200).Words,
            StringComparison.Ordinal
        );
        pdf[^1] ^= 1;
        Assert.Contains("Not confirmed", (await anybody.UploadAsync("/verify", "file", pdf)).Expect(200).Words, StringComparison.Ordinal);
        Assert.Contains("Choose the PDF", (await anybody.UploadAsync("/verify", "file", [])).Expect(400).Words, StringComparison.Ordinal);
    }

    private async Task<DeskClient> AnybodyAsync()
    {
        var client = await workshop.ClientAsync(null);
        client.DefaultRequestHeaders.Accept.ParseAdd("text/html");
        return new(client);
    }

    private static string Plain(string ledger) =>
        System.Text.RegularExpressions.Regex.Replace(ledger, "\"(publicId|documentSha256|pdfSha256)\":\"[^\"]+\"", "$1");
}
