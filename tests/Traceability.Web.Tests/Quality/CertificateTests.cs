using System.Net.Http.Headers;
using System.Text.Json;
using UglyToad.PdfPig;

namespace Traceability.Web.Tests.Quality;

public sealed class CertificateTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task The_certificate_holds_the_serial_the_film_lot_the_parts_and_every_final_value()
    {
        var (front, rear) = (await workshop.DiaphragmAsync(903), await workshop.DiaphragmAsync(905));
        var capsule = await workshop.CapsuleAsync(front, rear);
        var unit = await workshop.UnitAsync(capsule);
        var issued = await IssueAsync(unit);
        Assert.Equal((unit, "1"), (issued.Text("serial"), issued.Text("revision")));
        Assert.Equal($"https://workshop.example/verify/{issued.Text("certificateId")}", issued.Text("verifyAddress"));

        var text = TextOf(await BytesAsync($"parts/{unit}/certificate.pdf"));
        foreach (
            var expected in new[]
            {
                unit,
                capsule,
                front,
                rear,
                Workshop.Film,
                Workshop.Ring,
                "14.20",
                "70.50",
                "903",
                "905",
                "45",
                "CAL-RB-1",
                "CAL-AN-1",
                "Bea Builder",
                "Ben Builder",
            }
        )
        {
            Assert.Contains(expected, text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_json_twin_says_the_same_and_draws_the_response_with_its_mask()
    {
        var unit = await workshop.UnitAsync();
        await IssueAsync(unit);
        var twin = JsonSerializer.Deserialize<JsonElement>(await BytesAsync($"parts/{unit}/certificates/1.json"));
        Assert.Equal(unit, twin.Text("serial"));
        var pattern = twin.List("patterns").Single();
        Assert.Equal(
            ("cardioid", "Sensitivity at 1 kHz", "14.20", "within"),
            (
                pattern.Text("pattern"),
                pattern.List("values")[0].Text("label"),
                pattern.List("values")[0].Text("value"),
                pattern.List("values")[0].Text("verdict")
            )
        );
        var curve = twin.List("curves").Single();
        Assert.Equal((3, 2), (curve.List("traces")[0].List("points").Count, curve.List("mask").Count));
        Assert.Contains("Faults seen", twin.List("measurements").SelectMany(m => m.Texts("values", "label")));
        Assert.Equal("Ben Builder", twin.Text("releasedBy.name"));
        Assert.Equal(6, twin.List("contents").First(c => c.Has("film")).At("film.baseThicknessUm").GetInt32());
    }

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
        await IssueAsync(replaced.Unit);
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

    private async Task<(string Unit, string Id)> CertifiedAsync()
    {
        var unit = await workshop.UnitAsync();
        return (unit, (await IssueAsync(unit)).Text("certificateId"));
    }

    [Fact]
    public async Task An_unfinished_unit_gets_no_certificate_and_is_told_what_is_missing()
    {
        var unit = await workshop.RegisterAsync("unit");
        var refused = await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality);
        Assert.Contains("Final acoustic test", refused.Problem(409), StringComparison.Ordinal);
        Assert.Equal("stages", refused.Json.List("checks")[0].Text("rule"));
        (await workshop.GetAsync($"parts/{unit}/certificate.pdf")).Expect(404);
        var capsule = await workshop.CapsuleAsync();
        Assert.Contains(
            "finished units",
            (await workshop.PostAsync($"parts/{capsule}/certificates", null, Workshop.Quality)).Json.List("checks")[0].Text("remedy"),
            StringComparison.Ordinal
        );
        (await workshop.PostAsync("parts/NOBODY/certificates", null, Workshop.Quality)).Expect(404);
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Builder)).Expect(403);
    }

    [Fact]
    public async Task A_held_lot_inside_keeps_the_certificate_back()
    {
        await WorkshopSetUp.LotAsync(workshop, "FILM-C", "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        var unit = await workshop.UnitAsync(await workshop.CapsuleAsync(await workshop.DiaphragmAsync(film: "FILM-C")));
        (await workshop.PostAsync("holds", new { lot = "FILM-C", reason = "pinholes" }, Workshop.Quality)).Expect(201);
        Assert.Contains(
            "pinholes",
            (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Problem(409),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task What_was_issued_is_handed_out_byte_for_byte_and_verifies_as_genuine()
    {
        var unit = await workshop.UnitAsync();
        var issued = await IssueAsync(unit);
        var pdf = await BytesAsync($"parts/{unit}/certificates/1.pdf");
        Assert.Equal(pdf, await BytesAsync($"parts/{unit}/certificate.pdf"));
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
        var first = await IssueAsync(unit);
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
        var second = await IssueAsync(unit);

        Assert.Equal("2", second.Text("revision"));
        Assert.Contains("revision 2", (await VerifyAsync(first)).Text("words"), StringComparison.Ordinal);
        Assert.Equal("True", (await VerifyAsync(second)).Text("current"));
        Assert.Contains("13.70", TextOf(await BytesAsync($"parts/{unit}/certificate.pdf")), StringComparison.Ordinal);
        Assert.Contains("14.20", TextOf(await BytesAsync($"parts/{unit}/certificates/1.pdf")), StringComparison.Ordinal);
        Assert.Equal(["1", "2"], (await workshop.GetAsync($"parts/{unit}/certificates")).Expect(200).Texts("items", "revision"));
        (await workshop.GetAsync($"parts/{unit}/certificates/3.pdf")).Expect(404);
    }

    [Fact]
    public async Task Anybody_may_verify_and_nobody_learns_of_certificates_that_do_not_exist()
    {
        var issued = await IssueAsync(await workshop.UnitAsync());
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
    public async Task A_concession_and_a_correction_stand_openly_on_the_certificate()
    {
        var diaphragm = await workshop.MountAsync();
        await workshop.CureAsync(diaphragm);
        var failed = await workshop.VerifyAsync(diaphragm, 921);
        (
            await workshop.PostAsync(
                $"nonconformities/{failed.Id("nonconformity.id")}/disposition",
                new
                {
                    kind = "concession",
                    reason = "one hertz, inaudible",
                    limitedTo = "this unit only",
                    pin = Workshop.PinOf(Workshop.Quality),
                },
                Workshop.Quality
            )
        ).Expect(201);
        var rear = await workshop.MountAsync();
        await workshop.CureAsync(rear);
        var misread = (await workshop.VerifyAsync(rear, 909)).List("readings")[0].Id();
        (await workshop.PostAsync($"readings/{misread}/corrections", new { value = 919, reason = "digit misread" })).Expect(201);
        var unit = await workshop.UnitAsync(await workshop.CapsuleAsync(diaphragm, rear));
        await IssueAsync(unit);
        var text = TextOf(await BytesAsync($"parts/{unit}/certificate.pdf"));
        Assert.Contains("outside, conceded", text, StringComparison.Ordinal);
        Assert.Contains("one hertz, inaudible", text, StringComparison.Ordinal);
        Assert.Contains("digit misread", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_unit_is_shipped_with_a_current_certificate_and_not_before()
    {
        var unit = await workshop.UnitAsync();
        Assert.Contains("certificate", (await ShipAsync(unit)).Problem(409), StringComparison.Ordinal);
        await IssueAsync(unit);
        (await workshop.PostAsync($"parts/{unit}/shipments", new { customerReference = new string('x', 101) }, Workshop.Quality)).Expect(
            400
        );
        Assert.Equal("shipped", (await ShipAsync(unit)).Expect(201).Text("part.state"));
        Assert.Contains("already", (await ShipAsync(unit)).Problem(409), StringComparison.Ordinal);
        (await workshop.PostAsync($"parts/{unit}/removals", new { position = "capsule", reason = "x" })).Expect(409);
    }

    [Fact]
    public async Task Work_on_a_part_inside_makes_the_certificate_of_the_unit_out_of_date()
    {
        var diaphragm = await workshop.MountAsync();
        await workshop.CureAsync(diaphragm);
        var reading = (await workshop.VerifyAsync(diaphragm, 909)).List("readings")[0].Id();
        var unit = await workshop.UnitAsync(await workshop.CapsuleAsync(diaphragm));
        var first = await IssueAsync(unit);
        Assert.Equal("True", (await VerifyAsync(first)).Text("current"));

        (
            await workshop.PostAsync($"readings/{reading}/corrections", new { value = 908, reason = "digit misread" }, Workshop.Quality)
        ).Expect(201);
        Assert.Equal("False", (await VerifyAsync(first)).Text("current"));
        Assert.Contains("certificate for its present state", (await ShipAsync(unit)).Problem(409), StringComparison.Ordinal);

        Assert.Equal("True", (await VerifyAsync(await IssueAsync(unit))).Text("current"));
        (await ShipAsync(unit)).Expect(201);
    }

    private Task<Reply> ShipAsync(string unit) =>
        workshop.PostAsync($"parts/{unit}/shipments", new { customerReference = "ORDER-7" }, Workshop.Quality);

    private async Task<JsonElement> IssueAsync(string unit) =>
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);

    private async Task<JsonElement> VerifyAsync(JsonElement issued) =>
        (await workshop.GetAsync($"verify/{issued.Text("certificateId")}", null)).Expect(200);

    private async Task<JsonElement> VerifyFileAsync(byte[] pdf)
    {
        var content = new ByteArrayContent(pdf) { Headers = { ContentType = new MediaTypeHeaderValue("application/pdf") } };
        return (await workshop.PostAsync("verify", content, null)).Expect(200);
    }

    private async Task<byte[]> BytesAsync(string path)
    {
        using var client = await workshop.ClientAsync(Workshop.Quality);
        return await client.GetByteArrayAsync($"/api/v1/{path}");
    }

    private static string TextOf(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return string.Join("\n", document.GetPages().Select(p => string.Join(' ', p.GetWords())));
    }
}
