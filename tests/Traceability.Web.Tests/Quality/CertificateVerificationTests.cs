using System.Net.Http.Headers;
using System.Text.Json;

namespace Traceability.Web.Tests.Quality;

/// <summary>A certificate is handed out as it was issued, and everybody is told whether it is genuine and current.</summary>
public sealed class CertificateVerificationTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task Public_page_and_internal_page_say_the_same_of_a_certificate_whatever_became_of_its_unit()
    {
        var (current, returned, held, replaced) = (
            await CertifiedAsync(),
            await CertifiedAsync(),
            await CertifiedAsync(),
            await CertifiedAsync()
        );
        (await workshop.PostAsync($"parts/{returned.Unit}/shipments", new { customerReference = "Studio Dune" }, Workshop.Quality)).Expect(
            201
        );
        (await workshop.PostAsync("returns", new { serial = returned.Unit, complaint = "hums" }, Workshop.ServiceDesk)).Expect(201);
        (await workshop.PostAsync("holds", new { part = held.Unit, reason = "dropped" }, Workshop.Quality)).Expect(201);
        await workshop.IssueAsync(replaced.Unit);
        var desk = await Pages.DeskClient.SignInAsync(workshop, Workshop.Quality);
        foreach (
            var (unit, id, expected) in new[]
            {
                (current.Unit, current.Id, true),
                (returned.Unit, returned.Id, false),
                (held.Unit, held.Id, true),
                (replaced.Unit, replaced.Id, false),
            }
        )
        {
            var said = (await workshop.GetAsync($"verify/{id}", null)).Expect(200);
            var row = System
                .Text.RegularExpressions.Regex.Matches(
                    (await desk.GetAsync($"/parts/{unit}/certificate")).Expect(200).Html,
                    "<tr>.*?</tr>",
                    System.Text.RegularExpressions.RegexOptions.Singleline
                )
                .Single(r => r.Value.Contains(id, StringComparison.Ordinal))
                .Value;
            Assert.Equal(
                (expected, expected),
                (
                    said.At("current").GetBoolean(),
                    row.Contains("> current<", StringComparison.Ordinal) || row.Contains("</svg>current<", StringComparison.Ordinal)
                )
            );
        }

        var words = (await workshop.GetAsync($"verify/{returned.Id}", null)).Expect(200).Text("words");
        Assert.Contains("came back", words, StringComparison.Ordinal);
        Assert.DoesNotContain("hums", words, StringComparison.Ordinal);
        Assert.DoesNotContain("Dune", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_issued_is_handed_out_byte_for_byte_and_verifies_as_genuine()
    {
        var unit = await workshop.UnitAsync();
        var issued = await workshop.IssueAsync(unit);
        var pdf = await workshop.BytesAsync($"parts/{unit}/certificates/1.pdf");
        Assert.Equal(pdf, await workshop.BytesAsync($"parts/{unit}/certificate.pdf"));
        Assert.Equal(issued.Text("pdfSha256"), Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(pdf)));

        var verified = await VerifyFileAsync(pdf);
        Assert.Equal(
            ("True", "True", "True", unit),
            (verified.Text("genuine"), verified.Text("current"), verified.Text("unaltered"), verified.Text("serial"))
        );
        pdf[^20]++;
        var altered = await VerifyFileAsync(pdf);
        Assert.Equal(("False", "False"), (altered.Text("genuine"), altered.Text("unaltered")));
        (await workshop.PostAsync("verify", new { }, null)).Expect(415);
    }

    [Fact]
    public async Task A_later_revision_takes_the_place_of_the_earlier_one_and_both_stay()
    {
        var unit = await workshop.UnitAsync();
        var first = await workshop.IssueAsync(unit);
        (await workshop.PostAsync($"parts/{unit}/removals", new { position = "capsule", reason = "crackle" })).Expect(201);
        Assert.Equal("False", (await VerifyAsync(first)).Text("current"));
        await workshop.RecordAsync(
            unit,
            "assemble",
            new { fittings = new[] { new { position = "capsule", child = await workshop.CapsuleAsync() } } }
        );
        await workshop.RecordAsync(
            unit,
            "final-acoustic",
            new
            {
                instruments = new[] { "AN-1" },
                readings = new[] { new { characteristic = "sensitivityCardioidMvPa", value = "13.70" } },
                evidence = new[]
                {
                    new
                    {
                        name = "cardioid",
                        mediaType = "text/csv",
                        text = Workshop.FlatResponse,
                    },
                },
            }
        );
        await workshop.RecordAsync(
            unit,
            "inspection",
            new { readings = new[] { new { characteristic = "surfaceFaults", value = 0 } } },
            Workshop.OtherBuilder
        );
        var second = await workshop.IssueAsync(unit);

        Assert.Equal("2", second.Text("revision"));
        Assert.Contains("revision 2", (await VerifyAsync(first)).Text("words"), StringComparison.Ordinal);
        Assert.Equal("True", (await VerifyAsync(second)).Text("current"));
        Assert.Contains("13.70", Certifying.TextOf(await workshop.BytesAsync($"parts/{unit}/certificate.pdf")), StringComparison.Ordinal);
        Assert.Contains(
            "14.20",
            Certifying.TextOf(await workshop.BytesAsync($"parts/{unit}/certificates/1.pdf")),
            StringComparison.Ordinal
        );
        Assert.Equal(["1", "2"], (await workshop.GetAsync($"parts/{unit}/certificates")).Expect(200).Texts("items", "revision"));
        (await workshop.GetAsync($"parts/{unit}/certificates/3.pdf")).Expect(404);
    }

    [Fact]
    public async Task Anybody_may_verify_and_nobody_learns_of_certificates_that_do_not_exist()
    {
        var issued = await workshop.IssueAsync(await workshop.UnitAsync());
        var id = issued.Text("certificateId");
        Assert.True(id.Length >= 16);
        (await workshop.GetAsync($"verify/{id}", null)).Expect(200);
        (await workshop.GetAsync($"verify/{id.ToLowerInvariant()}", null)).Expect(200);
        (await workshop.GetAsync("verify/NOSUCHCERTIFICATE", null)).Expect(404);
        var plain = new HttpRequestMessage(HttpMethod.Get, $"/verify/{id}");
        plain.Headers.Accept.Add(new("application/json"));
        Assert.Equal("True", (await workshop.SendAsync(plain, null)).Expect(200).Text("genuine"));
    }

    [Fact]
    public async Task Work_on_a_part_inside_makes_the_certificate_of_the_unit_out_of_date()
    {
        var diaphragm = await workshop.MountAsync();
        await workshop.CureAsync(diaphragm);
        var reading = (await workshop.VerifyAsync(diaphragm, 909)).List("readings")[0].Id();
        var unit = await workshop.UnitAsync(await workshop.CapsuleAsync(diaphragm));
        var first = await workshop.IssueAsync(unit);
        Assert.Equal("True", (await VerifyAsync(first)).Text("current"));

        (
            await workshop.PostAsync($"readings/{reading}/corrections", new { value = 908, reason = "digit misread" }, Workshop.Quality)
        ).Expect(201);
        Assert.Equal("False", (await VerifyAsync(first)).Text("current"));
        Assert.Contains("certificate for its present state", (await workshop.ShipAsync(unit)).Problem(409), StringComparison.Ordinal);

        Assert.Equal("True", (await VerifyAsync(await workshop.IssueAsync(unit))).Text("current"));
        (await workshop.ShipAsync(unit)).Expect(201);
    }

    private async Task<JsonElement> VerifyFileAsync(byte[] pdf)
    {
        var content = new ByteArrayContent(pdf) { Headers = { ContentType = new MediaTypeHeaderValue("application/pdf") } };
        return (await workshop.PostAsync("verify", content, null)).Expect(200);
    }

    private async Task<(string Unit, string Id)> CertifiedAsync()
    {
        var unit = await workshop.UnitAsync();
        return (unit, (await workshop.IssueAsync(unit)).Text("certificateId"));
    }

    private async Task<JsonElement> VerifyAsync(JsonElement issued) =>
        (await workshop.GetAsync($"verify/{issued.Text("certificateId")}", null)).Expect(200);
}
