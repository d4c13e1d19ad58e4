namespace Traceability.Web.Tests.Pages;

public sealed class DeskInstrumentTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task An_instrument_its_calibration_and_its_check_by_page_store_the_same_facts_as_by_API()
    {
        var (lead, builder) = (
            await DeskClient.SignInAsync(workshop, Workshop.Lead),
            await DeskClient.SignInAsync(workshop, Workshop.Builder)
        );
        (
            await workshop.PostAsync(
                "instruments",
                new
                {
                    code = "IT-A",
                    kind = "insulation-tester",
                    title = "Tester",
                    checkNominal = 100,
                    checkTolerance = 2.5,
                    checkUnit = "GOhm",
                },
                Workshop.Lead
            )
        ).Expect(201);
        var added = await lead.SendAsync(
            "/instruments",
            "add",
            ("code", "it-b"),
            ("kind", "insulation-tester"),
            ("title", "Tester"),
            ("checkNominal", "100"),
            ("checkTolerance", "2.5"),
            ("checkUnit", "GOhm")
        );
        Assert.Equal("/instruments/IT-B", added.Expect(200).Path);
        Assert.Equal(await workshop.LastAsync("IT-A"), await workshop.LastAsync("IT-B"));

        (
            await workshop.PostAsync(
                "instruments/IT-A/calibrations",
                new
                {
                    calibratedOn = "2026-01-05",
                    dueOn = "2027-01-05",
                    reference = "CAL-7",
                    note = "as found",
                },
                Workshop.Lead
            )
        ).Expect(201);
        (
            await lead.SendAsync(
                "/instruments/IT-B",
                "calibrate",
                ("calibratedOn", "2026-01-05"),
                ("dueOn", "2027-01-05"),
                ("reference", "CAL-7"),
                ("outcome", "passed"),
                ("note", "as found")
            )
        ).Expect(200);
        Assert.Equal(await workshop.LastAsync("IT-A"), await workshop.LastAsync("IT-B"));

        (await workshop.PostAsync("instruments/IT-A/checks", new { value = "102.50" })).Expect(201);
        Assert.Contains(
            "usable",
            (await builder.SendAsync("/instruments/IT-B", "check", ("value", "102.50"))).Expect(200).Words,
            StringComparison.Ordinal
        );
        Assert.Equal(await workshop.LastAsync("IT-A"), await workshop.LastAsync("IT-B"));
    }

    [Fact]
    public async Task A_failed_check_is_recorded_and_says_that_the_instrument_may_not_be_used()
    {
        (
            await workshop.PostAsync(
                "instruments",
                new
                {
                    code = "TQ-1",
                    kind = "torque-driver",
                    title = "Driver",
                },
                Workshop.Lead
            )
        ).Expect(201);
        var after = await (await DeskClient.SignInAsync(workshop, Workshop.Quality)).SendAsync(
            "/instruments/TQ-1",
            "check",
            ("outcome", "failed"),
            ("note", "slips")
        );
        Assert.Contains("may not be used", after.Expect(200).Words, StringComparison.Ordinal);
        Assert.Contains("held", after.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_calibration_without_its_days_is_refused_and_builders_record_none()
    {
        var refused = await (await DeskClient.SignInAsync(workshop, Workshop.Lead)).SendAsync(
            "/instruments/RB-1",
            "calibrate",
            ("calibratedOn", "2026-01-05"),
            ("reference", "CAL-7")
        );
        Assert.Contains("say when it was calibrated", refused.Expect(400).Words, StringComparison.Ordinal);
        Assert.DoesNotContain(
            "Record a calibration",
            (await (await DeskClient.SignInAsync(workshop, Workshop.Builder)).GetAsync("/instruments/RB-1")).Expect(200).Words,
            StringComparison.Ordinal
        );
    }
}
