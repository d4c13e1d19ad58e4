using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Quality;

public sealed class ConcessionTests(Workshop workshop) : IClassFixture<Workshop>
{
    private static readonly string Pin = Workshop.PinOf(Workshop.Quality);

    [Fact]
    public async Task A_concession_for_two_parts_of_a_lot_covers_two_and_refuses_the_third_in_words()
    {
        await WorkshopSetUp.LotAsync(workshop, "CON-FILM", "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        var number = await GiveAsync(
            new
            {
                lot = "con-film",
                mostParts = 2,
                reason = "a little coarse",
                pin = Pin,
            }
        );
        var (first, second, third) = (await RaisedAsync("CON-FILM"), await RaisedAsync("CON-FILM"), await RaisedAsync("CON-FILM"));
        var decided = (await ConcedeAsync(first, number)).Expect(201);
        Assert.Equal($"{number}: at most 2 parts", decided.Text("limitedTo"));
        (await ConcedeAsync(second, number)).Expect(201);
        Assert.Contains("at most 2 parts and was used on 2", (await ConcedeAsync(third, number)).Problem(409), StringComparison.Ordinal);
        var row = (await workshop.GetAsync("quality/concessions")).Expect(200).List().Single(c => c.Text("number") == number);
        Assert.Equal(("used-up", "2", "0"), (row.Text("state"), row.Text("used"), row.Text("left")));
    }

    [Fact]
    public async Task Of_two_decisions_at_once_only_one_takes_the_last_part()
    {
        var number = await GiveAsync(
            new
            {
                code = "scratched-film",
                mostParts = 1,
                reason = "not seen from outside",
                pin = Pin,
            }
        );
        var raised = new[] { await RaisedAsync(Workshop.Film), await RaisedAsync(Workshop.Film) };
        var answers = await Task.WhenAll(raised.Select(r => ConcedeAsync(r, number)));
        Assert.Equal([201, 409], answers.Select(a => (int)a.Status).Order());
    }

    [Fact]
    public async Task A_concession_ends_with_its_last_day()
    {
        var today = DateOnly.FromDateTime(workshop.Clock.GetUtcNow().UtcDateTime);
        var number = await GiveAsync(
            new
            {
                stage = "mount",
                validUntil = today,
                reason = "until the new jig is here",
                pin = Pin,
            }
        );
        var failed = await FailedMountAsync();
        (await ConcedeAsync(failed, number)).Expect(201);
        workshop.Clock.Pass(TimeSpan.FromDays(1));
        Assert.Contains("ran out on", (await ConcedeAsync(await FailedMountAsync(), number)).Problem(409), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_concession_covers_only_what_it_says()
    {
        await WorkshopSetUp.LotAsync(workshop, "CON-OTHER", "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        var raised = await RaisedAsync(Workshop.Film);
        Assert.Contains(
            "not in this part",
            (
                await ConcedeAsync(
                    raised,
                    await GiveAsync(
                        new
                        {
                            lot = "CON-OTHER",
                            mostParts = 5,
                            reason = "x",
                            pin = Pin,
                        }
                    )
                )
            ).Problem(409),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "covers the nonconformity",
            (
                await ConcedeAsync(
                    raised,
                    await GiveAsync(
                        new
                        {
                            code = "dust",
                            mostParts = 5,
                            reason = "x",
                            pin = Pin,
                        }
                    )
                )
            ).Problem(409),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "of the stage",
            (
                await ConcedeAsync(
                    raised,
                    await GiveAsync(
                        new
                        {
                            stage = "cure",
                            mostParts = 5,
                            reason = "x",
                            pin = Pin,
                        }
                    )
                )
            ).Problem(409),
            StringComparison.Ordinal
        );
        (await ConcedeAsync(raised, "CON-9999")).Expect(404);
        var any = await GiveAsync(
            new
            {
                code = "scratched-film",
                mostParts = 5,
                reason = "x",
                pin = Pin,
            }
        );
        (
            await workshop.PostAsync(
                $"nonconformities/{raised}/disposition",
                new
                {
                    kind = "scrap",
                    reason = "x",
                    pin = Pin,
                    permit = any,
                },
                Workshop.Quality
            )
        ).Expect(400);
    }

    [Fact]
    public async Task A_concession_needs_a_scope_a_limit_a_reason_and_the_PIN()
    {
        async Task RefusedAsync(int status, object permit, string badge = Workshop.Quality) =>
            (await workshop.PostAsync("quality/concessions", permit, badge)).Expect(status);
        await RefusedAsync(
            400,
            new
            {
                mostParts = 1,
                reason = "x",
                pin = Pin,
            }
        );
        await RefusedAsync(
            400,
            new
            {
                code = "dust",
                reason = "x",
                pin = Pin,
            }
        );
        await RefusedAsync(
            400,
            new
            {
                code = "dust",
                mostParts = 0,
                reason = "x",
                pin = Pin,
            }
        );
        await RefusedAsync(
            400,
            new
            {
                code = "dust",
                mostParts = 1,
                reason = " ",
                pin = Pin,
            }
        );
        await RefusedAsync(
            400,
            new
            {
                code = "dust",
                validUntil = "2020-01-01",
                reason = "x",
                pin = Pin,
            }
        );
        await RefusedAsync(
            404,
            new
            {
                lot = "NOTHING",
                mostParts = 1,
                reason = "x",
                pin = Pin,
            }
        );
        await RefusedAsync(
            403,
            new
            {
                code = "dust",
                mostParts = 1,
                reason = "x",
                pin = "999999",
            }
        );
        await RefusedAsync(
            403,
            new
            {
                code = "dust",
                mostParts = 1,
                reason = "x",
                pin = Pin,
            },
            Workshop.Builder
        );
    }

    [Fact]
    public async Task Given_and_used_on_the_pages()
    {
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        (
            await desk.SendAsync("/concessions", "give", ("code", "scratched-film"), ("mostParts", "some"), ("reason", "x"), ("_Pin", Pin))
        ).Expect(400);
        (
            await desk.SendAsync(
                "/concessions",
                "give",
                ("code", "scratched-film"),
                ("mostParts", "3"),
                ("reason", "on the page"),
                ("_Pin", Pin)
            )
        ).Expect(200);
        var number = (await workshop.GetAsync("quality/concessions"))
            .Expect(200)
            .List()
            .First(c => c.Text("reason") == "on the page")
            .Text("number");
        var raised = await RaisedAsync(Workshop.Film);
        var page = (await desk.GetAsync($"/nonconformities/{raised}?kind=Concession")).Expect(200);
        Assert.Contains($"{number}: at most 3 parts", page.Words, StringComparison.Ordinal);
        (await desk.SendAsync(page, "decide", ("reason", "covered"), ("permit", number), ("_Pin", Pin))).Expect(200);
        Assert.Contains("2 left", (await desk.GetAsync("/concessions")).Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_hold_and_a_lot_say_what_stops()
    {
        await WorkshopSetUp.LotAsync(workshop, "CON-STOP", "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        await workshop.MountAsync("CON-STOP");
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        Assert.Contains(
            "1 parts that contain it stop: 1 diaphragm",
            (await desk.GetAsync("/lots/CON-STOP")).Words,
            StringComparison.Ordinal
        );
        (await workshop.PostAsync("holds", new { lot = "CON-STOP", reason = "doubt" }, Workshop.Quality)).Expect(201);
        Assert.Contains("Stops 1 parts now: 1 diaphragm", (await desk.GetAsync("/holds")).Words, StringComparison.Ordinal);
    }

    private async Task<string> GiveAsync(object permit) =>
        (await workshop.PostAsync("quality/concessions", permit, Workshop.Quality)).Expect(201).Text("number");

    private async Task<Guid> RaisedAsync(string film) =>
        (
            await workshop.PostAsync(
                $"parts/{await workshop.MountAsync(film)}/nonconformities",
                new { code = "scratched-film", description = "a scratch" }
            )
        )
            .Expect(201)
            .Id();

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

    private Task<Reply> ConcedeAsync(Guid id, string permit) =>
        workshop.PostAsync(
            $"nonconformities/{id}/disposition",
            new
            {
                kind = "concession",
                reason = "covered",
                pin = Pin,
                permit,
            },
            Workshop.Quality
        );
}
