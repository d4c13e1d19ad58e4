using System.Text.Json;
using UglyToad.PdfPig;

namespace Traceability.Web.Tests.Quality;

/// <summary>Every sentence of a certificate says what was recorded, in the words of those who read it.</summary>
public sealed class CertificateWordsTests(Workshop workshop) : IClassFixture<Workshop>
{
    private const string Directions = """
        model: DIR-1
        kind: unit
        title: Microphone with directions
        serialPrefix: X
        author: L1
        approvedBy: Q1
        effectiveFrom: 2020-01-01
        stages:
          - code: acoustic
            title: Acoustic test
            method: response-in-mask
            evidence:
              - {name: front, kind: frequency-response}
              - {name: rear, kind: frequency-response}
              - {name: side, kind: frequency-response}
            characteristics:
              - {name: frontMarginDb, label: Front inside the mask by, unit: dB, lower: 0, entered: false, onCertificate: true}
              - {name: rearMarginDb, label: Rear inside the mask by, unit: dB, lower: 0, entered: false, onCertificate: true}
            parameters:
              maskedEvidence: [front, rear]
              mask:
                - {frequencyHz: 100, lowerDb: -3, upperDb: 3}
                - {frequencyHz: 10000, lowerDb: -3, upperDb: 3}
        """;

    [Fact]
    public async Task Everybody_who_signed_is_named_with_the_roles_held_then()
    {
        var unit = await workshop.UnitAsync();
        await GiveAsync(Workshop.OtherBuilder, "service", true);
        await GiveAsync(Workshop.OtherBuilder, "builder", false);
        var later = await workshop.UnitAsync(builder: Workshop.Importer, inspector: Workshop.Builder);
        var (first, second) = (await IssuedAsync(unit), await IssuedAsync(later));
        await GiveAsync(Workshop.OtherBuilder, "builder", true);
        Assert.Equal(("Ben Builder", "builder"), (first.Text("releasedBy.name"), first.Text("releasedBy.role")));
        Assert.All(first.List("builtBy"), s => Assert.Equal(("Bea Builder", "builder"), (s.Text("name"), s.Text("role"))));
        Assert.Equal(("Bea Builder", "builder"), (second.Text("releasedBy.name"), second.Text("releasedBy.role")));
        Assert.Contains(
            second.List("builtBy"),
            s => s.Text("name") == "Ida Importer" && s.Text("role") == "builder, quality lead, importer"
        );
    }

    [Fact]
    public async Task A_certificate_prints_the_calibration_in_force_at_the_measurement()
    {
        var unit = await workshop.UnitAsync();
        var measured = DateOnly.FromDateTime(workshop.Clock.GetUtcNow().UtcDateTime);
        await CalibrateAsync(measured.AddDays(-10), "CAL-PAPER-CAME-LATE");
        workshop.Clock.Pass(TimeSpan.FromDays(2));
        await CalibrateAsync(measured.AddDays(2), "CAL-AFTERWARDS");

        var analyser = Assert.Single((await IssuedAsync(unit)).List("instruments"), i => i.Text("code") == "AN-1");
        Assert.Equal("CAL-PAPER-CAME-LATE", analyser.Text("calibrationReference"));
    }

    [Fact]
    public async Task What_did_not_conform_is_said_in_the_words_of_the_route()
    {
        var diaphragm = await workshop.MountAsync();
        await workshop.CureAsync(diaphragm);
        await ConcedeAsync(await workshop.VerifyAsync(diaphragm, 921));
        var issued = await IssuedAsync(
            await workshop.UnitAsync(await workshop.CapsuleAsync(diaphragm, await workshop.DiaphragmAsync(915)))
        );
        var carried = Assert.Single(issued.List("nonconformities"));
        Assert.Equal("Resonance on the ring failed: Resonance on the ring 921 Hz is outside 880 to 920 Hz", carried.Text("description"));
        Assert.Equal("Resonance on the ring 921 Hz, 880 to 920 Hz allowed; limited to: this unit only", carried.Text("limits"));
    }

    [Fact]
    public async Task Nothing_is_said_that_nobody_recorded_and_numbers_have_true_minus_signs()
    {
        var unit = await workshop.UnitAsync();
        var text = await TextAsync(unit, await IssuedAsync(unit));
        foreach (
            var invented in new[]
            {
                "plane",
                "rated supply",
                "reference axis",
                "20 °C",
                "from memory",
                "within ≥",
                "was not measured",
                "inspector",
                "TEST-1/unit",
            }
        )
        {
            Assert.DoesNotContain(invented, text, StringComparison.Ordinal);
        }

        Assert.Contains("\u22125", text, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"(?<![\w.])-\d", text);
        Assert.Contains("within, at least 0", text, StringComparison.Ordinal);
        Assert.Contains("Microphone of the tests, revision 1", text, StringComparison.Ordinal);
        Assert.Contains("The air was not recorded at: Final acoustic test.", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Rear_and_side_are_drawn_relative_to_the_front_at_1_kHz()
    {
        await workshop.RouteAsync(Directions);
        var unit = (await workshop.PostAsync("parts", new { kind = "unit", model = "DIR-1" })).Expect(201).Text("serial");
        var files = new[] { ("front", -38m), ("rear", -57.8m), ("side", -44m) };
        await workshop.RecordAsync(
            unit,
            "acoustic",
            new
            {
                evidence = files.Select(f => new
                {
                    name = f.Item1,
                    mediaType = "text/csv",
                    text = Level(f.Item2),
                }),
            }
        );

        var curves = (await IssuedAsync(unit)).List("curves");
        decimal At1kHz(string name) =>
            Assert.Single(
                curves
                    .SelectMany(c => c.List("traces"))
                    .Where(t => t.Text("name") == name)
                    .SelectMany(t => t.List("points"))
                    .Where(p => p.Text("frequencyHz") == "1000")
                    .Select(p => p.At("levelDb").GetDecimal())
                    .Distinct()
            );
        Assert.Equal((0m, -19.8m, -6m), (At1kHz("front"), At1kHz("rear"), At1kHz("side")));

        var rear = Assert.Single(curves, c => c.List("mask").Count > 0 && c.List("traces")[0].Text("name") == "rear");
        Assert.Equal(("-22.8", "-16.8"), (rear.List("mask")[0].Text("lowerDb"), rear.List("mask")[0].Text("upperDb")));
        Assert.All(
            curves,
            c => Assert.Contains("0 dB is the level of front at 1 kHz.", c.Text("referenceConditions"), StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task A_revision_says_what_changed_since_the_last_one_and_why()
    {
        var rear = await workshop.MountAsync();
        await workshop.CureAsync(rear);
        var misread = (await workshop.VerifyAsync(rear, 909)).List("readings")[0].Id();
        var capsule = await workshop.CapsuleAsync(null, rear);
        var unit = await workshop.UnitAsync(capsule);
        Assert.False((await IssuedAsync(unit)).Has("changes") && (await LatestAsync(unit)).List("changes").Count > 0);

        (
            await workshop.PostAsync($"readings/{misread}/corrections", new { value = 908, reason = "digit misread" }, Workshop.Quality)
        ).Expect(201);
        (await workshop.PostAsync($"parts/{unit}/removals", new { position = "capsule", reason = "crackle" })).Expect(201);
        var other = await workshop.CapsuleAsync();
        await workshop.FinishAsync(unit, other, "13.70");
        var second = await IssuedAsync(unit);

        var changes = second.List("changes");
        Assert.Equal(
            [
                $"capsule taken out: {capsule}",
                $"capsule fitted: {other}",
                "Assembly done again",
                "Final acoustic test done again",
                "Final inspection and release done again",
            ],
            changes.Select(c => c.Text("what"))
        );
        Assert.Equal(("crackle", "Bea Builder", unit), (changes[0].Text("why"), changes[0].Text("by"), changes[0].Text("partSerial")));
        var sensitivity = Assert.Single(changes[3].List("values"), v => v.Text("label") == "Sensitivity at 1 kHz, cardioid");
        Assert.Equal(("14.20", "13.70", "mV/Pa"), (sensitivity.Text("was"), sensitivity.Text("now"), sensitivity.Text("unit")));
        var text = await TextAsync(unit, second);
        Assert.Contains("What changed since revision 1", text, StringComparison.Ordinal);
        Assert.Contains($"Capsule taken out: {capsule} crackle", text, StringComparison.Ordinal);
        Assert.Contains("Sensitivity at 1 kHz, cardioid: 13.70 mV/Pa, was 14.20", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_correction_and_a_decision_since_the_last_certificate_are_told_with_their_reasons()
    {
        var diaphragm = await workshop.MountAsync();
        await workshop.CureAsync(diaphragm);
        var reading = (await workshop.VerifyAsync(diaphragm, 909)).List("readings")[0].Id();
        var unit = await workshop.UnitAsync(await workshop.CapsuleAsync(diaphragm));
        await IssuedAsync(unit);
        (
            await workshop.PostAsync($"readings/{reading}/corrections", new { value = 908, reason = "digit misread" }, Workshop.Quality)
        ).Expect(201);
        var raised = (
            await workshop.PostAsync(
                $"parts/{unit}/nonconformities",
                new { code = "scratched-body", description = "a scratch on the body" }
            )
        )
            .Expect(201)
            .Id();
        await DecideAsync(raised);

        var changes = (await IssuedAsync(unit)).List("changes");
        Assert.Equal(
            ("Resonance on the ring corrected: 908 Hz, was 909", "digit misread", diaphragm),
            (changes[0].Text("what"), changes[0].Text("why"), changes[0].Text("partSerial"))
        );
        Assert.Equal(
            ("a scratch on the body: concession, limited to: this unit only", "one hertz, inaudible"),
            (changes[1].Text("what"), changes[1].Text("why"))
        );
        Assert.Equal(2, changes.Count);

        Assert.Contains(
            "Nothing was recorded on the unit or on anything in it since revision 2",
            await TextAsync(unit, await IssuedAsync(unit)),
            StringComparison.Ordinal
        );
    }

    private static string Level(decimal db) => FormattableString.Invariant($"frequency_hz,level_db\n100,{db}\n1000,{db}\n10000,{db}\n");

    private async Task GiveAsync(string badge, string role, bool given) =>
        (await workshop.PostAsync($"people/{badge}/roles", new { role, given }, Workshop.Lead)).Expect(200);

    private async Task CalibrateAsync(DateOnly on, string reference) =>
        (
            await workshop.PostAsync(
                "instruments/AN-1/calibrations",
                new
                {
                    calibratedOn = on,
                    dueOn = on.AddDays(365),
                    reference,
                },
                Workshop.Quality
            )
        ).Expect(201);

    private Task ConcedeAsync(JsonElement failed) => DecideAsync(failed.Id("nonconformity.id"));

    private async Task DecideAsync(Guid nonconformity) =>
        (
            await workshop.PostAsync(
                $"nonconformities/{nonconformity}/disposition",
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

    private async Task<JsonElement> IssuedAsync(string unit)
    {
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
        return await LatestAsync(unit);
    }

    private async Task<JsonElement> LatestAsync(string unit)
    {
        var latest = (await workshop.GetAsync($"parts/{unit}/certificates")).Expect(200).List()[^1].Text("revision");
        return (await workshop.GetAsync($"parts/{unit}/certificates/{latest}.json")).Expect(200);
    }

    private async Task<string> TextAsync(string unit, JsonElement issued)
    {
        using var client = await workshop.ClientAsync(Workshop.Quality);
        using var pdf = PdfDocument.Open(
            await client.GetByteArrayAsync($"/api/v1/parts/{unit}/certificates/{issued.Text("revision")}.pdf")
        );
        return string.Join("\n", pdf.GetPages().Select(p => string.Join(' ', p.GetWords())));
    }
}
