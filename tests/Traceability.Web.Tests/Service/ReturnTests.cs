namespace Traceability.Web.Tests.Service;

public sealed class ReturnTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_returned_unit_is_looked_into_repaired_and_shipped_again()
    {
        var unit = await ShippedAsync("ORDER-11");
        var opened = (
            await workshop.PostAsync(
                "returns",
                new
                {
                    serial = unit,
                    complaint = "crackles on damp evenings",
                    customerReference = "RMA-5",
                },
                Workshop.ServiceDesk
            )
        ).Expect(201);
        Assert.Equal("finished", opened.Text("part.state"));
        (
            await workshop.PostAsync(
                $"returns/{opened.Id()}/findings",
                new { code = "flux-on-ring", description = "flux left on the ring" },
                Workshop.ServiceDesk
            )
        ).Expect(201);
        var row = (await workshop.GetAsync("returns?open=true")).Expect(200).List().Single(r => r.Id() == opened.Id());
        Assert.Equal(
            ("RMA-5", "flux-on-ring", "Sam Service"),
            (row.Text("customerReference"), row.List("findings")[0].Text("code"), row.Text("receivedBy.name"))
        );

        (await workshop.PostAsync($"parts/{unit}/removals", new { position = "capsule", reason = "flux" }, Workshop.ServiceDesk)).Expect(
            201
        );
        (
            await workshop.PostAsync(
                $"returns/{opened.Id()}/outcome",
                new { kind = "repaired", reason = "capsule changed" },
                Workshop.ServiceDesk
            )
        ).Expect(201);
        (await workshop.PostAsync($"returns/{opened.Id()}/close", new { action = "capsule changed" }, Workshop.ServiceDesk)).Expect(201);
        Assert.Contains(
            "capsule changed",
            (await workshop.PostAsync($"returns/{opened.Id()}/close", new { action = "again" }, Workshop.ServiceDesk)).Problem(409),
            StringComparison.Ordinal
        );
        Assert.Equal("False", (await workshop.GetAsync($"returns/{opened.Id()}")).Expect(200).Text("open"));
        var told = (await workshop.GetAsync($"parts/{unit}/history")).Expect(200).Texts("items", "what");
        Assert.Equal(
            ["certificate", "shipped", "returned", "return-finding", "removed", "return-outcome", "return-closed"],
            told.TakeLast(7)
        );
    }

    [Fact]
    public async Task A_return_is_not_closed_before_something_was_found_and_somebody_said_how_it_came_out()
    {
        var (_, back) = await ReturnedAsync();

        Assert.Equal(["return-finding", "return-outcome"], await UnmetAsync($"returns/{back}/close", new { action = "dusted" }));
        await FindAsync(back);
        Assert.Equal(["return-outcome"], await UnmetAsync($"returns/{back}/close", new { action = "dusted" }));
        await ComeOutAsync(back, "no-fault");

        (await workshop.PostAsync($"returns/{back}/close", new { action = "dusted" }, Workshop.ServiceDesk)).Expect(201);
        Assert.Contains(
            "return was closed",
            (await workshop.PostAsync($"returns/{back}/outcome", new { kind = "repaired", reason = "x" }, Workshop.ServiceDesk)).Problem(
                409
            ),
            StringComparison.Ordinal
        );
        var row = (await workshop.GetAsync($"returns/{back}")).Expect(200);
        Assert.Equal(
            ("no-fault", "looked at it for a week", "Sam Service"),
            (row.Text("outcome.kind"), row.Text("outcome.reason"), row.Text("outcome.by.name"))
        );
    }

    [Fact]
    public async Task A_unit_without_a_fault_goes_out_again_only_when_its_return_is_closed_and_on_a_certificate_issued_since_it_came_back()
    {
        var (unit, back) = await ReturnedAsync();
        await FindAsync(back);
        Assert.Equal(["return-outcome", "return-closed"], await UnmetAsync($"parts/{unit}/shipments", new { }, Workshop.Quality));
        await ComeOutAsync(back, "no-fault");
        (await workshop.PostAsync($"returns/{back}/close", new { action = "listened to" }, Workshop.ServiceDesk)).Expect(201);

        Assert.Contains(
            "since it came back",
            (await workshop.PostAsync($"parts/{unit}/shipments", new { }, Workshop.Quality)).Problem(409),
            StringComparison.Ordinal
        );
        Assert.Equal("2", (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201).Text("revision"));
        (await workshop.PostAsync($"parts/{unit}/shipments", new { }, Workshop.Quality)).Expect(201);
    }

    [Fact]
    public async Task A_unit_said_to_be_repaired_has_no_certificate_until_something_was_tested_since_it_came_back()
    {
        var (unit, back) = await ReturnedAsync();
        await FindAsync(back);
        await ComeOutAsync(back, "repaired");

        Assert.Equal(["return-test"], await UnmetAsync($"parts/{unit}/certificates", null, Workshop.Quality));

        var raised = (
            await workshop.PostAsync(
                $"parts/{unit}/nonconformities",
                new { code = "bad-contact", description = "contact opens" },
                Workshop.ServiceDesk
            )
        )
            .Expect(201)
            .Id();
        (
            await workshop.PostAsync(
                $"nonconformities/{raised}/disposition",
                new
                {
                    kind = "rework",
                    returnTo = "inspection",
                    reason = "cleaned",
                    pin = Workshop.PinOf(Workshop.Quality),
                },
                Workshop.Quality
            )
        ).Expect(201);
        Assert.Equal(["stages", "return-test"], await UnmetAsync($"parts/{unit}/certificates", null, Workshop.Quality));
        await workshop.RecordAsync(
            unit,
            "inspection",
            new { readings = new[] { new { characteristic = "surfaceFaults", value = 0 } } },
            Workshop.OtherBuilder
        );
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
    }

    [Fact]
    public async Task A_unit_sent_back_unrepaired_says_so_on_its_new_certificate()
    {
        var (unit, back) = await ReturnedAsync();
        await FindAsync(back);
        await ComeOutAsync(back, "unrepaired");
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);

        var carried = (await workshop.GetAsync($"parts/{unit}/certificates/2.json")).Expect(200).List("nonconformities").Single();
        Assert.Equal("unrepaired", carried.Text("disposition"));
        Assert.Contains("crackles", carried.Text("description"), StringComparison.Ordinal);
        Assert.Contains("looked at it for a week", carried.Text("reason"), StringComparison.Ordinal);
        Assert.Contains("customer", carried.Text("reason"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_return_comes_out_as_scrapped_only_when_the_unit_was_scrapped_and_then_as_nothing_else()
    {
        var (unit, back) = await ReturnedAsync();
        Assert.Contains(
            "not scrapped",
            (
                await workshop.PostAsync($"returns/{back}/outcome", new { kind = "scrapped", reason = "beyond help" }, Workshop.ServiceDesk)
            ).Problem(409),
            StringComparison.Ordinal
        );
        var raised = (
            await workshop.PostAsync(
                $"parts/{unit}/nonconformities",
                new { code = "drowned", description = "water inside" },
                Workshop.ServiceDesk
            )
        )
            .Expect(201)
            .Id();
        (
            await workshop.PostAsync(
                $"nonconformities/{raised}/disposition",
                new
                {
                    kind = "scrap",
                    reason = "corroded",
                    pin = Workshop.PinOf(Workshop.Quality),
                },
                Workshop.Quality
            )
        ).Expect(201);

        Assert.Contains(
            "scrapped",
            (await workshop.PostAsync($"returns/{back}/outcome", new { kind = "repaired", reason = "x" }, Workshop.ServiceDesk)).Problem(
                409
            ),
            StringComparison.Ordinal
        );
        await ComeOutAsync(back, "scrapped");
    }

    [Fact]
    public async Task How_a_return_came_out_is_said_with_a_reason_by_the_service_desk()
    {
        var (_, back) = await ReturnedAsync();

        (await workshop.PostAsync($"returns/{back}/outcome", new { kind = "no-fault", reason = " " }, Workshop.ServiceDesk)).Expect(400);
        (await workshop.PostAsync($"returns/{back}/outcome", new { kind = "vanished", reason = "x" }, Workshop.ServiceDesk)).Expect(400);
        (await workshop.PostAsync($"returns/{back}/outcome", new { kind = "no-fault", reason = "x" }, Workshop.Builder)).Expect(403);
        (
            await workshop.PostAsync($"returns/{Guid.NewGuid()}/outcome", new { kind = "no-fault", reason = "x" }, Workshop.ServiceDesk)
        ).Expect(404);
    }

    [Fact]
    public async Task Only_what_was_shipped_comes_back_and_only_with_a_complaint()
    {
        var unit = await workshop.UnitAsync();
        async Task RefusedAsync(int status, object body, string badge = Workshop.ServiceDesk) =>
            (await workshop.PostAsync("returns", body, badge)).Expect(status);
        await RefusedAsync(409, new { serial = unit, complaint = "x" });
        await RefusedAsync(400, new { serial = "NOBODY", complaint = "x" });
        await RefusedAsync(400, new { serial = unit, complaint = "" });
        await RefusedAsync(403, new { serial = unit, complaint = "x" }, Workshop.Builder);
        (
            await workshop.PostAsync($"returns/{Guid.NewGuid()}/findings", new { code = "x", description = "y" }, Workshop.ServiceDesk)
        ).Expect(404);
        (await workshop.GetAsync($"returns/{Guid.NewGuid()}")).Expect(404);
    }

    [Fact]
    public async Task The_look_up_box_finds_parts_carriers_lots_and_references_by_a_fragment()
    {
        var unit = await ShippedAsync("GREY_HERON 100%");
        await workshop.RegisterAsync("diaphragm", "TIN-99");
        Assert.Contains(unit, await FindAsync(unit[2..].ToLowerInvariant(), "serial"));
        Assert.Contains("TIN-99", await FindAsync("tin-9", "code"));
        Assert.Contains(Workshop.Film, await FindAsync("s-film", "code"));
        Assert.Equal([unit], await FindAsync("heron 100%", "serial"));
        Assert.Empty(await FindAsync("GREYXHERON", "code"));
        Assert.Empty(await FindAsync("%%", "code"));
        Assert.Equal([unit], await FindAsync("Y_H", "serial"));
        Assert.Empty(await FindAsync("\\", "code"));
        foreach (var bad in new[] { "search", "search?q=", "search?q=%20", "search?q=%00", $"search?q={new string('x', 101)}" })
        {
            (await workshop.GetAsync(bad)).Expect(400);
        }
    }

    private async Task<string[]> FindAsync(string text, string member) =>
        [
            .. (await workshop.GetAsync($"search?q={Uri.EscapeDataString(text)}", Workshop.ServiceDesk))
                .Expect(200)
                .List()
                .Where(f => f.Has(member))
                .Select(f => f.Text(member)),
        ];

    private async Task<(string Unit, Guid Return)> ReturnedAsync()
    {
        var unit = await ShippedAsync("ORDER-20");
        return (
            unit,
            (await workshop.PostAsync("returns", new { serial = unit, complaint = "crackles" }, Workshop.ServiceDesk)).Expect(201).Id()
        );
    }

    private async Task FindAsync(Guid back) =>
        (
            await workshop.PostAsync(
                $"returns/{back}/findings",
                new { code = "bad-contact", description = "contact opens" },
                Workshop.ServiceDesk
            )
        ).Expect(201);

    private async Task ComeOutAsync(Guid back, string kind) =>
        (
            await workshop.PostAsync($"returns/{back}/outcome", new { kind, reason = "looked at it for a week" }, Workshop.ServiceDesk)
        ).Expect(201);

    /// <summary>The rules that a refusal names.</summary>
    private async Task<string[]> UnmetAsync(string path, object? body, string badge = Workshop.ServiceDesk) =>
        [
            .. (await workshop.PostAsync(path, body, badge))
                .Expect(409)
                .List("checks")
                .Where(c => c.Text("met") == "False")
                .Select(c => c.Text("rule")),
        ];

    private async Task<string> ShippedAsync(string reference)
    {
        var unit = await workshop.UnitAsync();
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync($"parts/{unit}/shipments", new { customerReference = reference }, Workshop.Quality)).Expect(201);
        return unit;
    }
}
