namespace Traceability.Web.Tests.Pages;

public sealed class DeskHoldTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task Holds_put_and_lifted_by_page_store_the_same_facts_as_by_API()
    {
        var (byApi, byPage) = (await workshop.MountAsync(), await workshop.MountAsync());
        var held = (await workshop.PostAsync("holds", new { part = byApi, reason = "to be looked at" }, Workshop.Quality)).Expect(201).Id();
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        Assert.Equal("/holds", (await desk.SendAsync($"/holds/new?part={byPage}", "hold", ("reason", "to be looked at"))).Expect(200).Path);
        Assert.Equal(await workshop.LastAsync(byApi), await workshop.LastAsync(byPage));
        Assert.Equal("on-hold", await workshop.StateOfAsync(byPage));

        (await workshop.PostAsync($"holds/{held}/release", new { reason = "nothing found" }, Workshop.Quality)).Expect(201);
        var other = (await workshop.GetAsync("holds?open=true"))
            .Expect(200)
            .List()
            .Single(h => h.Has("part") && h.Text("part") == byPage)
            .Id();
        (await desk.SendAsync("/holds", $"lift-{other}", ("reason", "nothing found"))).Expect(200);
        Assert.Equal(await workshop.LastAsync(byApi), await workshop.LastAsync(byPage));
        Assert.Contains("nothing found", (await desk.GetAsync("/holds?lifted=true")).Expect(200).Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("lot", "HOLD-A", "HOLD-B")]
    [InlineData("instrument", "RB-1", "AN-1")]
    public async Task Lots_and_instruments_are_held_by_page_as_by_API(string what, string byApi, string byPage)
    {
        if (what == "lot")
        {
            await WorkshopSetUp.LotAsync(workshop, byApi, "glue");
            await WorkshopSetUp.LotAsync(workshop, byPage, "glue");
        }

        (
            await workshop.PostAsync("holds", new Dictionary<string, string> { [what] = byApi, ["reason"] = "doubtful" }, Workshop.Quality)
        ).Expect(201);
        (
            await (await DeskClient.SignInAsync(workshop, Workshop.Quality)).SendAsync(
                $"/holds/new?{what}={byPage}",
                "hold",
                ("reason", "doubtful")
            )
        ).Expect(200);
        Assert.Equal(await workshop.LastAsync(byApi), await workshop.LastAsync(byPage));
    }

    [Fact]
    public async Task What_a_hold_stops_is_shown_before_it_is_put()
    {
        await WorkshopSetUp.LotAsync(workshop, "FOIL-H", "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        var diaphragm = await workshop.DiaphragmAsync(film: "FOIL-H");
        var capsule = await workshop.CapsuleAsync(diaphragm);
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        var before = (await workshop.GetAsync("holds")).Expect(200).List().Count;
        var preview = (await desk.GetAsync("/holds/new?lot=foil-h")).Expect(200).Words;
        Assert.Contains("2 parts stop.", preview, StringComparison.Ordinal);
        Assert.Contains(diaphragm, preview, StringComparison.Ordinal);
        Assert.Contains(capsule, preview, StringComparison.Ordinal);
        Assert.Contains(capsule, (await desk.GetAsync($"/holds/new?part={diaphragm}")).Words, StringComparison.Ordinal);
        Assert.Contains(
            "Diaphragm: Resonance on the ring",
            (await desk.GetAsync("/holds/new?instrument=RB-1")).Words,
            StringComparison.Ordinal
        );
        Assert.Contains("no such thing as NOWHERE", (await desk.GetAsync("/holds/new?lot=NOWHERE")).Words, StringComparison.Ordinal);
        Assert.Equal(before, (await workshop.GetAsync("holds")).Expect(200).List().Count);
    }

    [Fact]
    public async Task A_hold_without_a_reason_is_refused_in_place_and_builders_put_none()
    {
        var serial = await workshop.MountAsync();
        var refused = await (await DeskClient.SignInAsync(workshop, Workshop.Quality)).SendAsync(
            $"/holds/new?part={serial}",
            "hold",
            ("reason", " ")
        );
        Assert.Contains("say why it is held", refused.Expect(400).Words, StringComparison.Ordinal);
        var builder = await DeskClient.SignInAsync(workshop, Workshop.Builder);
        (await builder.GetAsync("/holds/new")).Expect(403);
        Assert.DoesNotContain("Lift it", (await builder.GetAsync("/holds")).Expect(200).Words, StringComparison.Ordinal);
    }
}
