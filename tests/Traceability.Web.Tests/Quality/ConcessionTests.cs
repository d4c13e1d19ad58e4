using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Quality;

public sealed class ConcessionTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_concession_for_two_parts_of_a_lot_covers_two_and_refuses_the_third_in_words()
    {
        await WorkshopSetUp.LotAsync(workshop, "CON-FILM", "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        var number = await workshop.GiveAsync(
            new
            {
                lot = "con-film",
                mostParts = 2,
                reason = "a little coarse",
                pin = Conceding.Pin,
            }
        );
        var (first, second, third) = (
            await workshop.RaisedAsync("CON-FILM"),
            await workshop.RaisedAsync("CON-FILM"),
            await workshop.RaisedAsync("CON-FILM")
        );
        var decided = (await workshop.ConcedeAsync(first, number)).Expect(201);
        Assert.Equal($"{number}: at most 2 parts", decided.Text("limitedTo"));
        (await workshop.ConcedeAsync(second, number)).Expect(201);
        Assert.Contains(
            "at most 2 parts and was used on 2",
            (await workshop.ConcedeAsync(third, number)).Problem(409),
            StringComparison.Ordinal
        );
        var row = (await workshop.GetAsync("quality/concessions")).Expect(200).List().Single(c => c.Text("number") == number);
        Assert.Equal(("used-up", "2", "0"), (row.Text("state"), row.Text("used"), row.Text("left")));
    }

    [Fact]
    public async Task Of_two_decisions_at_once_only_one_takes_the_last_part()
    {
        var number = await workshop.GiveAsync(
            new
            {
                code = "scratched-film",
                mostParts = 1,
                reason = "not seen from outside",
                pin = Conceding.Pin,
            }
        );
        var raised = new[] { await workshop.RaisedAsync(Workshop.Film), await workshop.RaisedAsync(Workshop.Film) };
        var answers = await Task.WhenAll(raised.Select(r => workshop.ConcedeAsync(r, number)));
        Assert.Equal([201, 409], answers.Select(a => (int)a.Status).Order());
    }

    [Fact]
    public async Task A_concession_ends_with_its_last_day()
    {
        var today = DateOnly.FromDateTime(workshop.Clock.GetUtcNow().UtcDateTime);
        var number = await workshop.GiveAsync(
            new
            {
                stage = "mount",
                validUntil = today,
                reason = "until the new jig is here",
                pin = Conceding.Pin,
            }
        );
        var failed = await FailedMountAsync();
        (await workshop.ConcedeAsync(failed, number)).Expect(201);
        workshop.Clock.Pass(TimeSpan.FromDays(1));
        Assert.Contains(
            "ran out on",
            (await workshop.ConcedeAsync(await FailedMountAsync(), number)).Problem(409),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Given_and_used_on_the_pages()
    {
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        (
            await desk.SendAsync(
                "/concessions",
                "give",
                ("code", "scratched-film"),
                ("mostParts", "some"),
                ("reason", "x"),
                ("_Pin", Conceding.Pin)
            )
        ).Expect(400);
        (
            await desk.SendAsync(
                "/concessions",
                "give",
                ("code", "scratched-film"),
                ("mostParts", "3"),
                ("reason", "on the page"),
                ("_Pin", Conceding.Pin)
            )
        ).Expect(200);
        var number = (await workshop.GetAsync("quality/concessions"))
            .Expect(200)
            .List()
            .First(c => c.Text("reason") == "on the page")
            .Text("number");
        var raised = await workshop.RaisedAsync(Workshop.Film);
        var page = (await desk.GetAsync($"/nonconformities/{raised}?kind=Concession")).Expect(200);
        Assert.Contains($"{number}: at most 3 parts", page.Words, StringComparison.Ordinal);
        (await desk.SendAsync(page, "decide", ("reason", "covered"), ("permit", number), ("_Pin", Conceding.Pin))).Expect(200);
        Assert.Contains("2 left", (await desk.GetAsync("/concessions")).Words, StringComparison.Ordinal);
    }

    private async Task<Guid> FailedMountAsync()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        await workshop.RecordAsync(
            serial,
            "mount",
            new
            {
                readings = new[] { new { characteristic = "coarseHz", value = 1101 } },
                fittings = new[] { new { position = "film", lot = Workshop.Film } },
            }
        );
        return (await workshop.GetAsync("nonconformities?open=true&limit=500"))
            .Expect(200)
            .List()
            .First(n => n.Text("serial") == serial)
            .Id();
    }
}
