namespace Traceability.Web.Tests.Misuse;

public sealed class LotMisuseTests(StrictWorkshop strict) : IClassFixture<StrictWorkshop>
{
    private readonly Workshop workshop = strict.Workshop;

    [Fact]
    public async Task A_lot_that_was_never_released_is_refused()
    {
        await ReceiveAsync(
            new
            {
                number = "GLUE-Q",
                kind = StrictWorkshop.Glue,
                supplier = "Invented",
                supplierLot = "S",
                quantity = 1,
                unit = "kg",
            },
            release: false
        );
        await RefusedAsync("GLUE-Q", "lot GLUE-Q is in quarantine");
    }

    [Fact]
    public async Task A_lot_that_went_back_into_quarantine_is_refused_and_stops_what_is_made_of_it()
    {
        await WorkshopSetUp.LotAsync(workshop, "GLUE-B", StrictWorkshop.Glue);
        var made = await strict.RegisterAsync();
        (await strict.RecordAsync(made, lot: "GLUE-B")).Expect(201);
        (await workshop.PostAsync("lots/GLUE-B/quarantine", new { reason = "slips" }, Workshop.Quality)).Expect(200);
        await RefusedAsync("GLUE-B", "lot GLUE-B is in quarantine");
        await strict.ClosedByAsync(
            "lots-inside",
            "lot GLUE-B (slips)",
            () => workshop.PostAsync($"parts/{made}/records", new { stage = "look", station = "BENCH-1" })
        );
    }

    [Fact]
    public async Task A_held_lot_is_refused()
    {
        await WorkshopSetUp.LotAsync(workshop, "GLUE-H", StrictWorkshop.Glue);
        (await workshop.PostAsync("holds", new { lot = "GLUE-H", reason = "smells" }, Workshop.Quality)).Expect(201);
        await RefusedAsync("GLUE-H", "lot GLUE-H is on hold: smells");
    }

    [Fact]
    public async Task A_lot_is_good_until_it_expires_and_not_after()
    {
        var expiresAt = workshop.Clock.GetUtcNow().AddMinutes(30);
        await ReceiveAsync(
            new
            {
                number = "GLUE-E",
                kind = StrictWorkshop.Glue,
                supplier = "Invented",
                supplierLot = "S",
                quantity = 1,
                unit = "kg",
                expiresAt,
            }
        );
        (await strict.RecordAsync(await strict.RegisterAsync(), lot: "GLUE-E")).Expect(201);
        var late = await strict.RegisterAsync();
        workshop.Clock.Pass(TimeSpan.FromMinutes(31));
        await strict.ClosedByAsync("inputs", "lot GLUE-E expired on", () => strict.RecordAsync(late, lot: "GLUE-E"));
    }

    [Fact]
    public async Task A_mixed_lot_is_good_inside_its_pot_life_and_not_after()
    {
        var mixedAt = workshop.Clock.GetUtcNow();
        await ReceiveAsync(
            new
            {
                number = "GLUE-P",
                kind = StrictWorkshop.Glue,
                supplier = "Invented",
                supplierLot = "S",
                quantity = 1,
                unit = "g",
                mixedAt,
                potLifeMinutes = 40,
            }
        );
        (await strict.RecordAsync(await strict.RegisterAsync(), lot: "GLUE-P")).Expect(201);
        workshop.Clock.Pass(TimeSpan.FromMinutes(41));
        await RefusedAsync("GLUE-P", "lot GLUE-P is past its pot life of 40 min");
    }

    [Fact]
    public async Task A_lot_of_another_kind_an_unknown_one_and_none_of_it_are_refused()
    {
        await RefusedAsync(Workshop.Ring, "is insulating-ring; this slot takes");
        var serial = await strict.RegisterAsync();
        await strict.RefusedAsync(400, "there is no lot 'NOTHING'", () => strict.RecordAsync(serial, lot: "NOTHING"));
        foreach (var quantity in new object[] { 0, -1, "1,234", "NaN" })
        {
            await strict.RefusedAsync(
                400,
                "",
                () =>
                    workshop.PostAsync(
                        $"parts/{serial}/records",
                        new
                        {
                            stage = StrictWorkshop.Stage,
                            station = "BENCH-1",
                            instruments = new[] { StrictWorkshop.Gauge },
                            readings = new[] { new { characteristic = "heightMm", value = 9 } },
                            fittings = new[]
                            {
                                new
                                {
                                    position = "bond",
                                    lot = "GLUE-1",
                                    quantity,
                                },
                            },
                        }
                    )
            );
        }
    }

    [Fact]
    public async Task A_slot_left_empty_is_named()
    {
        var serial = await strict.RegisterAsync();
        await strict.ClosedByAsync(
            "inputs",
            "still empty: bond",
            () =>
                workshop.PostAsync(
                    $"parts/{serial}/records",
                    new
                    {
                        stage = StrictWorkshop.Stage,
                        station = "BENCH-1",
                        instruments = new[] { StrictWorkshop.Gauge },
                        readings = new[] { new { characteristic = "heightMm", value = 9 } },
                    }
                )
        );
    }

    private async Task RefusedAsync(string lot, string words)
    {
        var serial = await strict.RegisterAsync();
        await strict.ClosedByAsync("inputs", words, () => strict.RecordAsync(serial, lot: lot));
    }

    private async Task ReceiveAsync(object lot, bool release = true)
    {
        var number = (await workshop.PostAsync("lots", lot, Workshop.Quality)).Expect(201).Text("number");
        if (release)
        {
            (await workshop.PostAsync($"lots/{number}/release", new { reason = "seen" }, Workshop.Quality)).Expect(200);
        }
    }
}
