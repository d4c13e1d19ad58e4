namespace Traceability.Web.Tests.Quality;

/// <summary>What a concession covers, and what it must say when it is given.</summary>
public sealed class ConcessionScopeTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_concession_covers_only_what_it_says()
    {
        await WorkshopSetUp.LotAsync(workshop, "CON-OTHER", "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        var raised = await workshop.RaisedAsync(Workshop.Film);
        Assert.Contains(
            "not in this part",
            (
                await workshop.ConcedeAsync(
                    raised,
                    await workshop.GiveAsync(
                        new
                        {
                            lot = "CON-OTHER",
                            mostParts = 5,
                            reason = "x",
                            pin = Conceding.Pin,
                        }
                    )
                )
            ).Problem(409),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "covers the nonconformity",
            (
                await workshop.ConcedeAsync(
                    raised,
                    await workshop.GiveAsync(
                        new
                        {
                            code = "dust",
                            mostParts = 5,
                            reason = "x",
                            pin = Conceding.Pin,
                        }
                    )
                )
            ).Problem(409),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "of the stage",
            (
                await workshop.ConcedeAsync(
                    raised,
                    await workshop.GiveAsync(
                        new
                        {
                            stage = "cure",
                            mostParts = 5,
                            reason = "x",
                            pin = Conceding.Pin,
                        }
                    )
                )
            ).Problem(409),
            StringComparison.Ordinal
        );
        (await workshop.ConcedeAsync(raised, "CON-9999")).Expect(404);
        var any = await workshop.GiveAsync(
            new
            {
                code = "scratched-film",
                mostParts = 5,
                reason = "x",
                pin = Conceding.Pin,
            }
        );
        (
            await workshop.PostAsync(
                $"nonconformities/{raised}/disposition",
                new
                {
                    kind = "scrap",
                    reason = "x",
                    pin = Conceding.Pin,
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
                pin = Conceding.Pin,
            }
        );
        await RefusedAsync(
            400,
            new
            {
                code = "dust",
                reason = "x",
                pin = Conceding.Pin,
            }
        );
        await RefusedAsync(
            400,
            new
            {
                code = "dust",
                mostParts = 0,
                reason = "x",
                pin = Conceding.Pin,
            }
        );
        await RefusedAsync(
            400,
            new
            {
                code = "dust",
                mostParts = 1,
                reason = " ",
                pin = Conceding.Pin,
            }
        );
        await RefusedAsync(
            400,
            new
            {
                code = "dust",
                validUntil = "2020-01-01",
                reason = "x",
                pin = Conceding.Pin,
            }
        );
        await RefusedAsync(
            404,
            new
            {
                lot = "NOTHING",
                mostParts = 1,
                reason = "x",
                pin = Conceding.Pin,
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
                pin = Conceding.Pin,
            },
            Workshop.Builder
        );
    }
}
