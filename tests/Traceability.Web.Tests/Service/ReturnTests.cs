namespace Traceability.Web.Tests.Service;

public sealed class ReturnTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_returned_unit_is_looked_into_repaired_and_shipped_again()
    {
        var unit = await ShippedAsync("ORDER-11");
        var opened = (await workshop.PostAsync("returns", new { serial = unit, complaint = "crackles on damp evenings", customerReference = "RMA-5" }, Workshop.ServiceDesk)).Expect(201);
        Assert.Equal("finished", opened.Text("part.state"));
        (await workshop.PostAsync($"returns/{opened.Id()}/findings", new { code = "flux-on-ring", description = "flux left on the ring" }, Workshop.ServiceDesk)).Expect(201);
        var row = (await workshop.GetAsync("returns?open=true")).Expect(200).List().Single(r => r.Id() == opened.Id());
        Assert.Equal(("RMA-5", "flux-on-ring", "Sam Service"), (row.Text("customerReference"), row.List("findings")[0].Text("code"), row.Text("receivedBy.name")));

        (await workshop.PostAsync($"parts/{unit}/removals", new { position = "capsule", reason = "flux" }, Workshop.ServiceDesk)).Expect(201);
        (await workshop.PostAsync($"returns/{opened.Id()}/close", new { action = "capsule changed" }, Workshop.ServiceDesk)).Expect(201);
        Assert.Contains("capsule changed", (await workshop.PostAsync($"returns/{opened.Id()}/close", new { action = "again" }, Workshop.ServiceDesk)).Problem(409), StringComparison.Ordinal);
        Assert.Equal("False", (await workshop.GetAsync($"returns/{opened.Id()}")).Expect(200).Text("open"));
        var told = (await workshop.GetAsync($"parts/{unit}/history")).Expect(200).Texts("items", "what");
        Assert.Equal(["certificate", "shipped", "returned", "return-finding", "removed", "return-closed"], told.TakeLast(6));
    }

    [Fact]
    public async Task Only_what_was_shipped_comes_back_and_only_with_a_complaint()
    {
        var unit = await workshop.UnitAsync();
        async Task RefusedAsync(int status, object body, string badge = Workshop.ServiceDesk) => (await workshop.PostAsync("returns", body, badge)).Expect(status);
        await RefusedAsync(409, new { serial = unit, complaint = "x" });
        await RefusedAsync(400, new { serial = "NOBODY", complaint = "x" });
        await RefusedAsync(400, new { serial = unit, complaint = "" });
        await RefusedAsync(403, new { serial = unit, complaint = "x" }, Workshop.Builder);
        (await workshop.PostAsync($"returns/{Guid.NewGuid()}/findings", new { code = "x", description = "y" }, Workshop.ServiceDesk)).Expect(404);
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
        [.. (await workshop.GetAsync($"search?q={Uri.EscapeDataString(text)}", Workshop.ServiceDesk)).Expect(200).List().Where(f => f.Has(member)).Select(f => f.Text(member))];

    private async Task<string> ShippedAsync(string reference)
    {
        var unit = await workshop.UnitAsync();
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync($"parts/{unit}/shipments", new { customerReference = reference }, Workshop.Quality)).Expect(201);
        return unit;
    }
}
