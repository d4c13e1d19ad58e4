namespace Traceability.Web.Tests.Misuse;

public sealed class InstrumentMisuseTests(StrictWorkshop strict) : IClassFixture<StrictWorkshop>
{
    private readonly Workshop workshop = strict.Workshop;

    [Fact]
    public Task An_instrument_that_was_never_calibrated_is_refused() =>
        RefusedAsync("GAUGE-N", "GAUGE-N was never calibrated", () => Task.CompletedTask);

    [Fact]
    public Task An_instrument_whose_calibration_ran_out_yesterday_is_refused() =>
        RefusedAsync(
            "GAUGE-Y",
            "GAUGE-Y's calibration ran out on",
            async () =>
            {
                await strict.CalibrateAsync("GAUGE-Y", -1);
                await strict.CheckAsync("GAUGE-Y", 10);
            }
        );

    [Fact]
    public async Task An_instrument_is_good_on_the_last_day_of_its_calibration()
    {
        await strict.GaugeAsync("GAUGE-L");
        await strict.CalibrateAsync("GAUGE-L", 0);
        await strict.CheckAsync("GAUGE-L", 10);
        (await strict.RecordAsync(await strict.RegisterAsync(), instruments: ["GAUGE-L"])).Expect(201);
    }

    [Fact]
    public Task An_instrument_found_out_of_tolerance_is_refused() =>
        RefusedAsync(
            "GAUGE-T",
            "GAUGE-T was found out of tolerance",
            async () =>
            {
                await strict.CalibrateAsync("GAUGE-T", 300, passed: false);
                await strict.CheckAsync("GAUGE-T", 10);
            }
        );

    [Fact]
    public Task An_instrument_that_was_not_checked_today_is_refused() =>
        RefusedAsync("GAUGE-C", "GAUGE-C was not checked against its reference", () => strict.CalibrateAsync("GAUGE-C", 300));

    [Fact]
    public Task An_instrument_that_failed_its_check_is_refused() =>
        RefusedAsync(
            "GAUGE-F",
            "GAUGE-F failed its check",
            async () =>
            {
                await strict.CalibrateAsync("GAUGE-F", 300);
                await strict.CheckAsync("GAUGE-F", 10.11m);
            }
        );

    [Fact]
    public Task A_held_instrument_is_refused() =>
        RefusedAsync(
            "GAUGE-H",
            "GAUGE-H is on hold: dropped",
            async () =>
            {
                await strict.CalibrateAsync("GAUGE-H", 300);
                await strict.CheckAsync("GAUGE-H", 10);
                (await workshop.PostAsync("holds", new { instrument = "GAUGE-H", reason = "dropped" }, Workshop.Quality)).Expect(201);
            }
        );

    [Fact]
    public async Task An_unknown_instrument_one_of_another_kind_and_none_are_refused()
    {
        var serial = await strict.RegisterAsync();
        await strict.RefusedAsync(400, "there is no instrument GAUGE-X", () => strict.RecordAsync(serial, instruments: ["GAUGE-X"]));
        await strict.ClosedByAsync(
            "instruments",
            "no instrument of kind gauge was named",
            () => strict.RecordAsync(serial, instruments: ["RB-1"])
        );
        await strict.ClosedByAsync(
            "instruments",
            "no instrument of kind gauge was named",
            () => strict.RecordAsync(serial, instruments: [])
        );
    }

    private async Task RefusedAsync(string code, string words, Func<Task> prepare)
    {
        await strict.GaugeAsync(code);
        await prepare();
        var serial = await strict.RegisterAsync();
        await strict.ClosedByAsync("instruments", words, () => strict.RecordAsync(serial, instruments: [code]));
    }
}
