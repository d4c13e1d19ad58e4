namespace Traceability.Web.Tests.Station;

public sealed class PartListTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task Free_parts_are_finished_and_fitted_nowhere()
    {
        var free = await workshop.DiaphragmAsync();
        var unfinished = await workshop.MountAsync();
        var fitted = await workshop.DiaphragmAsync();
        await workshop.CapsuleAsync(fitted);
        var serials = await FreeAsync();
        Assert.Contains(free, serials);
        Assert.DoesNotContain(unfinished, serials);
        Assert.DoesNotContain(fitted, serials);
    }

    [Fact]
    public async Task A_part_with_a_held_lot_inside_is_not_free_until_the_hold_is_lifted()
    {
        await WorkshopSetUp.LotAsync(workshop, "FILM-HELD", "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        var serial = await workshop.DiaphragmAsync(film: "FILM-HELD");
        Assert.Contains(serial, await FreeAsync());
        var hold = (await workshop.PostAsync("holds", new { lot = "FILM-HELD", reason = "pinholes" }, Workshop.Quality)).Expect(201).Id();
        Assert.DoesNotContain(serial, await FreeAsync());
        (await workshop.PostAsync($"holds/{hold}/release", new { reason = "looked through" }, Workshop.Quality)).Expect(201);
        Assert.Contains(serial, await FreeAsync());
        (await workshop.PostAsync("lots/FILM-HELD/quarantine", new { reason = "pinholes after all" }, Workshop.Quality)).Expect(200);
        Assert.DoesNotContain(serial, await FreeAsync());
    }

    [Fact]
    public async Task Pages_follow_each_other_without_gap_or_repetition()
    {
        for (var i = 0; i < 5; i++)
        {
            await workshop.RegisterAsync("unit");
        }

        var whole = (await workshop.GetAsync("parts?kind=unit&limit=500")).Expect(200).Texts("items", "serial");
        var paged = new List<string>();
        var next = "";
        do
        {
            var page = (await workshop.GetAsync($"parts?kind=unit&limit=2&cursor={next}")).Expect(200);
            paged.AddRange(page.Texts("items", "serial"));
            next = page.Has("next") ? page.Text("next") : null;
        } while (next is not null);

        Assert.Equal(whole, paged);
        Assert.Equal(paged.Count, paged.Distinct().Count());
    }

    [Fact]
    public async Task The_list_comes_as_csv_when_that_is_asked_for()
    {
        var serial = await workshop.RegisterAsync("unit");
        var request = new HttpRequestMessage(HttpMethod.Get, "/api/v1/parts?kind=unit&state=ready");
        request.Headers.Accept.Add(new("text/csv"));
        var reply = await workshop.SendAsync(request, Workshop.Quality);
        var lines = reply.Body.Split("\r\n");
        Assert.Equal(
            "serial,kind,model,route,stage,state,carrier,fittedIn,openAttempt,standing.code,standing.until,standing.because,standing.where",
            lines[0]
        );
        Assert.Contains(
            lines,
            l => l.StartsWith($"{serial},unit,TEST-1,TEST-1/unit/1,assemble,ready,,,,in-work,", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("parts?state=asleep")]
    [InlineData("parts?limit=0")]
    [InlineData("parts?limit=501")]
    [InlineData("parts?limit=many")]
    [InlineData("parts?cursor=zz")]
    [InlineData("parts?cursor=41")]
    [InlineData("parts?free=perhaps")]
    [InlineData("parts?kind=%00")]
    public async Task Bad_questions_get_400(string address) => (await workshop.GetAsync(address)).Expect(400);

    private async Task<IReadOnlyList<string>> FreeAsync() =>
        (await workshop.GetAsync($"parts?kind=diaphragm&model={Workshop.Model}&free=true&limit=500")).Expect(200).Texts("items", "serial");
}
