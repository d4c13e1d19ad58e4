namespace Traceability.Web.Tests.Storage;

/// <summary>The verdicts that analyses are counted from: kept with the facts as they count now.</summary>
[Trait("Category", "Storage")]
public sealed class StageVerdictTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_correction_that_turns_a_verdict_turns_the_kept_one()
    {
        var serial = await workshop.MountAsync();
        await workshop.CureAsync(serial);
        var reading = (await workshop.VerifyAsync(serial, 921)).List("readings")[0].Id();
        Assert.Equal("mount+ cure+ verify-", await VerdictsAsync(serial));
        await CorrectAsync(reading, 901);
        Assert.Equal("mount+ cure+ verify+", await VerdictsAsync(serial));
        await CorrectAsync(reading, 922);
        Assert.Equal("mount+ cure+ verify-", await VerdictsAsync(serial));
        await AgreesAsync();
    }

    [Fact]
    public async Task An_abandoned_attempt_has_no_verdict_and_the_next_is_the_first()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var attempt = await workshop.OpenAsync(serial, "mount");
        Assert.Equal("", await VerdictsAsync(serial));
        (await workshop.PostAsync($"attempts/{attempt}/abandon", new { reason = "film torn" })).Expect(200);
        Assert.Equal("", await VerdictsAsync(serial));
        await workshop.RecordAsync(
            serial,
            "mount",
            new
            {
                readings = new[] { new { characteristic = "coarseHz", value = 850 } },
                fittings = new[] { new { position = "film", lot = Workshop.Film } },
            }
        );
        await using var door = BackDoor.Of(workshop);
        Assert.Equal("2 true", await door.AskAsync<string>($"select number || ' ' || first from stage_verdicts where serial = '{serial}'"));
        await AgreesAsync();
    }

    [Fact]
    public async Task A_verdict_after_rework_is_not_the_first()
    {
        var serial = await workshop.MountAsync();
        await workshop.CureAsync(serial);
        var failed = await workshop.VerifyAsync(serial, 921);
        (
            await workshop.PostAsync(
                $"nonconformities/{failed.Id("nonconformity.id")}/disposition",
                new
                {
                    kind = "rework",
                    returnTo = "verify",
                    reason = "tensioned again",
                    pin = Workshop.PinOf(Workshop.Quality),
                },
                Workshop.Quality
            )
        ).Expect(201);
        await workshop.VerifyAsync(serial, 900);
        await using var door = BackDoor.Of(workshop);
        Assert.Equal(
            "1 true false, 2 false true",
            await door.AskAsync<string>(
                "select string_agg(number || ' ' || first || ' ' || passed, ', ' order by number) from stage_verdicts where serial ="
                    + $" '{serial}' and stage = 'verify'"
            )
        );
        await AgreesAsync();
    }

    private async Task CorrectAsync(Guid reading, decimal hz) =>
        (await workshop.PostAsync($"readings/{reading}/corrections", new { value = hz, reason = "misread" }, Workshop.Quality)).Expect(201);

    /// <summary>Stages with + for passed and - for not.</summary>
    private async Task<string> VerdictsAsync(string serial)
    {
        await using var door = BackDoor.Of(workshop);
        return await door.AskAsync<string>(
            "select coalesce(string_agg(stage || case when passed then '+' else '-' end, ' ' order by begun_at, attempt_id), '') from"
                + $" stage_verdicts where serial = '{serial}'"
        );
    }

    private async Task AgreesAsync()
    {
        await using var health = new HealthCheck(workshop);
        Assert.Empty(await health.DerivedAsync(mend: false));
    }
}
