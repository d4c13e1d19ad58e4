namespace Traceability.Web.Tests.Pages;

public sealed class DeskServiceTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_return_its_finding_and_its_end_by_page_store_the_same_facts_as_by_API()
    {
        var (byApi, byPage) = (await ShippedAsync("ORDER-1"), await ShippedAsync("ORDER-2"));
        var desk = await DeskClient.SignInAsync(workshop, Workshop.ServiceDesk);
        var id = (
            await workshop.PostAsync(
                "returns",
                new
                {
                    serial = byApi,
                    complaint = "it crackles",
                    customerReference = "CASE-9",
                },
                Workshop.ServiceDesk
            )
        ).Expect(201).Id();
        var opened = (
            await desk.SendAsync(
                $"/returns/new?serial={byPage}",
                "return",
                ("serial", byPage),
                ("complaint", "it crackles"),
                ("customerReference", "CASE-9")
            )
        ).Expect(200);
        Assert.Equal(await workshop.LastAsync(byApi), await workshop.LastAsync(byPage));

        (
            await workshop.PostAsync($"returns/{id}/findings", new { code = "crackle", description = "in damp air" }, Workshop.ServiceDesk)
        ).Expect(201);
        (await desk.SendAsync(opened, "finding", ("code", "crackle"), ("description", "in damp air"))).Expect(200);
        Assert.Equal(await workshop.LastAsync(byApi), await workshop.LastAsync(byPage));

        (await workshop.PostAsync($"returns/{id}/outcome", new { kind = "no-fault", reason = "only dust" }, Workshop.ServiceDesk)).Expect(
            201
        );
        (await desk.SendAsync(opened.Path, "outcome", ("kind", "no-fault"), ("reason", "only dust"))).Expect(200);
        Assert.Equal(await workshop.LastAsync(byApi), await workshop.LastAsync(byPage));

        (await workshop.PostAsync($"returns/{id}/close", new { action = "cleaned" }, Workshop.ServiceDesk)).Expect(201);
        (await desk.SendAsync(opened.Path, "close", ("action", "cleaned"))).Expect(200);
        Assert.Equal(await workshop.LastAsync(byApi), await workshop.LastAsync(byPage));
        Assert.Contains(byPage, (await desk.GetAsync("/returns?closed=true")).Expect(200).Words, StringComparison.Ordinal);
        (await (await DeskClient.SignInAsync(workshop, Workshop.Builder)).GetAsync("/returns")).Expect(403);
    }

    [Fact]
    public async Task The_look_up_box_finds_by_fragment_and_goes_straight_to_what_is_named_whole()
    {
        var serial = await ShippedAsync("ORDER-4711");
        var desk = await DeskClient.SignInAsync(workshop, Workshop.ServiceDesk);
        Assert.Contains(serial, (await desk.GetAsync("/search?q=4711")).Expect(200).Words, StringComparison.Ordinal);
        Assert.Equal($"/parts/{serial}", (await desk.GetAsync($"/search?q={serial.ToLowerInvariant()}")).Expect(200).Path);
        var printed = Domain.Codes.PrintedCode.For(Domain.Codes.CodeKind.Lot, Workshop.Film).Text;
        Assert.Equal($"/lots/{Workshop.Film}", (await desk.GetAsync($"/search?q={printed}")).Expect(200).Path);
        var wrong = printed[..^1] + (printed[^1] == 'A' ? 'B' : 'A');
        Assert.Contains(
            "check letter does not fit",
            (await desk.GetAsync($"/search?q={wrong}")).Expect(200).Words,
            StringComparison.Ordinal
        );
        Assert.Contains("Nothing here is like zzz", (await desk.GetAsync("/search?q=zzz")).Words, StringComparison.Ordinal);
        (await desk.GetAsync("/search?q=%00%25_\\")).Expect(200);
        Assert.Contains("too long", (await desk.GetAsync($"/search?q={new string('x', 101)}")).Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_first_page_says_what_needs_each_person()
    {
        var serial = await workshop.MountAsync();
        (await workshop.PostAsync($"parts/{serial}/nonconformities", new { code = "scratched-film", description = "a scratch" })).Expect(
            201
        );
        Assert.Contains(
            $"{serial}: scratched-film",
            (await (await DeskClient.SignInAsync(workshop, Workshop.Quality)).GetAsync("/")).Expect(200).Words,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "returned units",
            (await (await DeskClient.SignInAsync(workshop, Workshop.ServiceDesk)).GetAsync("/")).Words,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "calibrations due",
            (await (await DeskClient.SignInAsync(workshop, Workshop.Lead)).GetAsync("/")).Words,
            StringComparison.Ordinal
        );
        Assert.Equal("/station", (await (await DeskClient.SignInAsync(workshop, Workshop.Builder)).GetAsync("/")).Path);
    }

    private async Task<string> ShippedAsync(string reference)
    {
        var serial = await workshop.UnitAsync();
        (await workshop.PostAsync($"parts/{serial}/certificates", new { }, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync($"parts/{serial}/shipments", new { customerReference = reference }, Workshop.Quality)).Expect(201);
        return serial;
    }
}
