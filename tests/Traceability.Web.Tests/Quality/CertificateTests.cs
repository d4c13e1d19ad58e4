using System.Text.Json;
using Traceability.Web.Tests.Setup;

namespace Traceability.Web.Tests.Quality;

public sealed class CertificateTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task The_certificate_holds_the_serial_the_film_lot_the_parts_and_every_final_value()
    {
        var (front, rear) = (await workshop.DiaphragmAsync(903), await workshop.DiaphragmAsync(905));
        var capsule = await workshop.CapsuleAsync(front, rear);
        var unit = await workshop.UnitAsync(capsule);
        await workshop.ShowEverythingAsync();
        var issued = await workshop.IssueAsync(unit);
        Assert.Equal((unit, "1"), (issued.Text("serial"), issued.Text("revision")));
        Assert.Equal($"https://workshop.example/verify/{issued.Text("certificateId")}", issued.Text("verifyAddress"));

        var text = Certifying.TextOf(await workshop.BytesAsync($"parts/{unit}/certificate.pdf"));
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
        await workshop.IssueAsync(unit);
        var twin = JsonSerializer.Deserialize<JsonElement>(await workshop.BytesAsync($"parts/{unit}/certificates/1.json"));
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
        await workshop.IssueAsync(unit);
        var text = Certifying.TextOf(await workshop.BytesAsync($"parts/{unit}/certificate.pdf"));
        Assert.Contains("outside, conceded", text, StringComparison.Ordinal);
        Assert.Contains("one hertz, inaudible", text, StringComparison.Ordinal);
        Assert.Contains("digit misread", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_unit_is_shipped_with_a_current_certificate_and_not_before()
    {
        var unit = await workshop.UnitAsync();
        Assert.Contains("certificate", (await workshop.ShipAsync(unit)).Problem(409), StringComparison.Ordinal);
        await workshop.IssueAsync(unit);
        (await workshop.PostAsync($"parts/{unit}/shipments", new { customerReference = new string('x', 101) }, Workshop.Quality)).Expect(
            400
        );
        Assert.Equal("shipped", (await workshop.ShipAsync(unit)).Expect(201).Text("part.state"));
        Assert.Contains("already", (await workshop.ShipAsync(unit)).Problem(409), StringComparison.Ordinal);
        (await workshop.PostAsync($"parts/{unit}/removals", new { position = "capsule", reason = "x" })).Expect(409);
    }
}
