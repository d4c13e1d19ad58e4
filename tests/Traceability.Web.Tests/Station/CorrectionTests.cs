namespace Traceability.Web.Tests.Station;

public sealed class CorrectionTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_corrected_reading_keeps_both_values_with_who_and_why()
    {
        var (serial, reading) = await VerifiedAsync(909);
        var corrected = (
            await workshop.PostAsync($"readings/{reading}/corrections", new { value = "900.50", reason = "digits swapped" })
        ).Expect(201);
        Assert.Equal(
            ("900.50", "pass", "pass"),
            (corrected.Text("reading.value"), corrected.Text("verdictBefore"), corrected.Text("verdictAfter"))
        );
        var history = (await workshop.GetAsync($"parts/{serial}/history")).Expect(200).List();
        var told = history.Single(e => e.Id() == reading);
        Assert.Equal("909", told.Text("reading.value"));
        var correction = told.List("corrections").Single();
        Assert.Equal(
            ("900.50", "digits swapped", "Bea Builder"),
            (correction.Text("value"), correction.Text("reason"), correction.Text("by.name"))
        );
        Assert.Equal(reading, history.Single(e => e.Text("what") == "correction").Id("corrects"));
    }

    [Fact]
    public async Task A_correction_that_turns_the_verdict_raises_a_nonconformity_by_itself()
    {
        var (serial, reading) = await VerifiedAsync(918);
        var corrected = (await workshop.PostAsync($"readings/{reading}/corrections", new { value = 921, reason = "misread" })).Expect(201);
        Assert.Equal(("fail", "correction-turned-verdict"), (corrected.Text("verdictAfter"), corrected.Text("nonconformity.code")));
        Assert.Equal("nonconforming", await workshop.StateOfAsync(serial));
    }

    [Fact]
    public async Task A_correction_that_makes_a_failed_stage_pass_answers_its_nonconformity()
    {
        var (serial, reading) = await VerifiedAsync(929);
        Assert.Contains(serial, await OpenAsync());
        (await workshop.PostAsync($"readings/{reading}/corrections", new { value = 919, reason = "misread" })).Expect(201);
        Assert.Equal("finished", await workshop.StateOfAsync(serial));
        Assert.DoesNotContain(serial, await OpenAsync());
        var all = (await workshop.GetAsync("nonconformities?open=false&limit=500")).Expect(200).Texts("items", "serial");
        Assert.Contains(serial, all);
    }

    [Fact]
    public async Task A_turned_verdict_that_is_turned_back_waits_for_nobody_in_the_list_either()
    {
        var (serial, reading) = await VerifiedAsync(917);
        (await workshop.PostAsync($"readings/{reading}/corrections", new { value = 927, reason = "misread" })).Expect(201);
        Assert.Contains(serial, await OpenAsync());
        (
            await workshop.PostAsync($"readings/{reading}/corrections", new { value = 917, reason = "it was right" }, Workshop.Quality)
        ).Expect(201);
        Assert.Equal("finished", await workshop.StateOfAsync(serial));
        Assert.DoesNotContain(serial, await OpenAsync());
    }

    [Fact]
    public async Task Once_the_part_has_gone_on_only_the_quality_lead_corrects()
    {
        var (serial, reading) = await VerifiedAsync(900);
        await workshop.CapsuleAsync(serial);
        (await workshop.PostAsync($"readings/{reading}/corrections", new { value = 901, reason = "misread" })).Expect(403);
        (await workshop.PostAsync($"readings/{reading}/corrections", new { value = 901, reason = "misread" }, Workshop.Quality)).Expect(
            201
        );
    }

    [Fact]
    public async Task A_correction_needs_a_number_a_reason_and_a_reading()
    {
        var (_, reading) = await VerifiedAsync(900);
        (await workshop.PostAsync($"readings/{reading}/corrections", new { value = "NaN", reason = "misread" })).Expect(400);
        (await workshop.PostAsync($"readings/{reading}/corrections", new { value = 901, reason = " " })).Expect(400);
        (await workshop.PostAsync($"readings/{reading}/corrections", new { value = 901 })).Expect(400);
        (await workshop.PostAsync($"readings/{Guid.NewGuid()}/corrections", new { value = 901, reason = "misread" })).Expect(404);
        (await workshop.PostAsync("readings/7/corrections", new { value = 901, reason = "misread" })).Expect(404);
    }

    private async Task<(string Serial, Guid Reading)> VerifiedAsync(decimal ringHz)
    {
        var serial = await workshop.MountAsync();
        await workshop.CureAsync(serial);
        return (serial, (await workshop.VerifyAsync(serial, ringHz)).List("readings")[0].Id());
    }

    private async Task<IReadOnlyList<string>> OpenAsync() =>
        (await workshop.GetAsync("nonconformities?open=true&limit=500")).Expect(200).Texts("items", "serial");
}
