namespace Traceability.Web.Tests.Quality.Analyses;

/// <summary>
/// What is kept beside the facts must say what the facts say now: after a correction, and at the place that is asked about.
/// </summary>
public sealed class CountedNowTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_corrected_value_takes_its_place_on_the_chart_in_the_order_of_work()
    {
        string first = await workshop.MountAsync(),
            second = await workshop.MountAsync();
        await workshop.CureAsync(first, second);
        var from = $"{workshop.Clock.GetUtcNow():yyyy-MM-dd'T'HH:mm:ss'Z'}";
        var reading = (await workshop.VerifyAsync(first, 900)).List("readings")[0].Id();
        workshop.Clock.Pass(TimeSpan.FromMinutes(1));
        await workshop.VerifyAsync(second, 902);
        foreach (var hz in new[] { 905, 930 })
        {
            (await workshop.PostAsync($"readings/{reading}/corrections", new { value = hz, reason = "misread" }, Workshop.Quality)).Expect(
                201
            );
        }

        var points = (await workshop.GetAsync($"quality/control-chart?stage=verify&characteristic=ringHz&from={from}"))
            .Expect(200)
            .List("points");
        Assert.Equal(
            [(first, 930.0, false), (second, 902.0, true)],
            points.Select(p => (p.Text("serial"), p.At("value").GetDouble(), p.At("met").GetBoolean()))
        );
    }

    [Fact]
    public async Task The_latest_failure_of_a_film_lot_is_told_of_the_place_that_is_asked_about()
    {
        await WorkshopSetUp.LotAsync(workshop, "FILM-TWICE", "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        var serial = await workshop.MountAsync("FILM-TWICE");
        var scratched = workshop.Clock.GetUtcNow();
        var raised = (await workshop.PostAsync($"parts/{serial}/nonconformities", new { code = "scratched", description = "scratched" }))
            .Expect(201)
            .Id();
        (
            await workshop.PostAsync(
                $"nonconformities/{raised}/disposition",
                new
                {
                    kind = "concession",
                    reason = "at the edge",
                    limitedTo = "this part",
                    pin = Workshop.PinOf(Workshop.Quality),
                },
                Workshop.Quality
            )
        ).Expect(201);
        await workshop.CureAsync(serial);
        var failed = workshop.Clock.GetUtcNow();
        await workshop.VerifyAsync(serial, 921);
        Assert.True(scratched < failed);

        Assert.Equal(scratched, await LastFailureAsync(""), TimeSpan.FromSeconds(1));
        Assert.Equal(scratched, await LastFailureAsync("?stage=diaphragm"), TimeSpan.FromSeconds(1));
        Assert.Equal(failed, await LastFailureAsync("?stage=verify"), TimeSpan.FromSeconds(1));
    }

    [Fact]
    public async Task Units_with_customers_are_those_that_are_there_now_and_not_all_that_ever_left()
    {
        await WorkshopSetUp.LotAsync(workshop, "FILM-OUT", "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        var units = new List<string>();
        for (var n = 0; n < 3; n++)
        {
            var capsule = await workshop.CapsuleAsync(
                await workshop.DiaphragmAsync(film: "FILM-OUT"),
                await workshop.DiaphragmAsync(film: "FILM-OUT")
            );
            units.Add(await workshop.UnitAsync(capsule));
            (await workshop.PostAsync($"parts/{units[n]}/certificates", null, Workshop.Quality)).Expect(201);
            (await workshop.PostAsync($"parts/{units[n]}/shipments", new { customerReference = $"Order {n}" }, Workshop.Quality)).Expect(
                201
            );
        }

        (await workshop.PostAsync("returns", new { serial = units[0], complaint = "hums" }, Workshop.ServiceDesk)).Expect(201);
        var row = (await workshop.GetAsync("quality/film-lots")).Expect(200).List().Single(l => l.Text("lot") == "FILM-OUT");
        Assert.Equal(("3", "2", "1"), (row.Text("unitsShipped"), row.Text("unitsWithCustomers"), row.Text("unitsReturned")));
        Assert.Equal(
            2,
            (await workshop.GetAsync("quality/trace?what=lot&code=FILM-OUT&limit=500"))
                .Expect(200)
                .List()
                .Count(p => p.Text("kind") == "unit" && p.Text("where") == "shipped")
        );
        var words = (await (await Pages.DeskClient.SignInAsync(workshop, Workshop.Quality)).GetAsync("/quality/film-lots"))
            .Expect(200)
            .Words;
        Assert.Contains("2 units with customers now", words, StringComparison.Ordinal);
        Assert.DoesNotContain("3 units left", words, StringComparison.Ordinal);
    }

    private async Task<DateTimeOffset> LastFailureAsync(string asked) =>
        (await workshop.GetAsync($"quality/film-lots{asked}"))
            .Expect(200)
            .List()
            .Single(l => l.Text("lot") == "FILM-TWICE")
            .At("lastFailure")
            .GetDateTimeOffset();
}
