using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Quality;

/// <summary>What a trace held is lifted as one decision, over HTTP and on the trace page.</summary>
public sealed class LiftTracedTests(Workshop workshop) : IClassFixture<Workshop>
{
    private static readonly string Pin = Workshop.PinOf(Workshop.Quality);

    [Fact]
    public async Task All_that_one_decision_held_is_lifted_at_once_and_only_once()
    {
        var (unit, parts) = await HeldAsync("LF-A");
        var decision = Assert.Single(await DecisionsAsync("LF-A"));
        Assert.Equal(parts, decision.Texts("parts", "serial"));
        Assert.Equal(
            ("LF-A", "0", "0", "True"),
            (decision.List("lots")[0].GetString(), decision.Text("stayHeld"), decision.Text("liftedBefore"), decision.Text("open"))
        );
        Assert.Equal("pinholes (trace of lot LF-A)", decision.Text("reason"));
        var lifted = (await LiftAsync(decision.Id(), "seen under the lens: none")).Expect(201);
        Assert.Equal(parts, lifted.List("parts").Select(p => p.GetString()!).Order(StringComparer.Ordinal));
        Assert.Equal(("1", "False", "0"), (lifted.Text("lots"), lifted.Text("instrument"), lifted.Text("liftedBefore")));
        Assert.Equal("finished", await workshop.StateOfAsync(unit));
        (await workshop.PostAsync($"parts/{unit}/certificates", new { }, Workshop.Quality)).Expect(201);
        Assert.Contains("lifted already", (await LiftAsync(decision.Id(), "again")).Problem(409), StringComparison.Ordinal);
        Assert.Equal("False", Assert.Single(await DecisionsAsync("LF-A")).Text("open"));
        Assert.All(
            (await workshop.GetAsync("holds?open=false&limit=500"))
                .Expect(200)
                .List()
                .Where(h => h.Text("reason") == decision.Text("reason")),
            h => Assert.Equal("seen under the lens: none", h.Text("releaseReason"))
        );
    }

    [Fact]
    public async Task What_was_lifted_one_by_one_keeps_its_reason_and_what_another_hold_stops_stays_stopped()
    {
        var (unit, parts) = await HeldAsync("LF-B");
        var diaphragm = parts.First(p => p != unit && p.StartsWith('D'));
        var one = (await workshop.GetAsync("holds?open=true&limit=500"))
            .Expect(200)
            .List()
            .Single(h => h.Has("part") && h.Text("part") == diaphragm);
        (await workshop.PostAsync($"holds/{one.Id()}/release", new { reason = "measured by itself" }, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync("holds", new { part = unit, reason = "a scratch" }, Workshop.Quality)).Expect(201);
        var decision = (await workshop.GetAsync($"quality/trace/holds/{one.Id()}")).Expect(200);
        Assert.Equal(
            ("1", "1", "3"),
            (
                decision.Text("liftedBefore"),
                decision.Text("stayHeld"),
                decision.List("parts").Count.ToString(System.Globalization.CultureInfo.InvariantCulture)
            )
        );
        Assert.Equal([unit], decision.List("parts").Where(p => p.At("staysHeld").GetBoolean()).Select(p => p.Text("serial")));
        var lifted = (await LiftAsync(one.Id(), "all good")).Expect(201);
        Assert.DoesNotContain(diaphragm, lifted.List("parts").Select(p => p.GetString()));
        Assert.Equal("on-hold", await workshop.StateOfAsync(unit));
        var holds = (await workshop.GetAsync("holds?open=false&limit=500")).Expect(200).List();
        Assert.Equal("measured by itself", holds.Single(h => h.Has("part") && h.Text("part") == diaphragm).Text("releaseReason"));
    }

    [Fact]
    public async Task Two_decisions_on_one_trace_are_lifted_apart()
    {
        var (unit, _) = await HeldAsync("LF-C");
        await HoldAsync("LF-C", "dull film");
        var decisions = await DecisionsAsync("LF-C");
        Assert.Equal(["pinholes (trace of lot LF-C)", "dull film (trace of lot LF-C)"], decisions.Select(d => d.Text("reason")));
        Assert.Equal(["4", "4"], decisions.Select(d => d.Text("stayHeld")));
        (await LiftAsync(decisions[0].Id(), "no pinholes")).Expect(201);
        Assert.Equal("on-hold", await workshop.StateOfAsync(unit));
        (await LiftAsync(decisions[1].Id(), "cleaned")).Expect(201);
        Assert.Equal("finished", await workshop.StateOfAsync(unit));
    }

    [Fact]
    public async Task An_instrument_is_freed_with_what_it_measured()
    {
        var code = $"LB-{Guid.NewGuid():N}"[..12].ToUpperInvariant();
        (
            await workshop.PostAsync(
                "instruments",
                new
                {
                    code,
                    kind = "resonance-bench",
                    title = "A bench",
                },
                Workshop.Lead
            )
        ).Expect(201);
        var today = DateOnly.FromDateTime(workshop.Clock.GetUtcNow().UtcDateTime);
        (
            await workshop.PostAsync(
                $"instruments/{code}/calibrations",
                new
                {
                    calibratedOn = today,
                    dueOn = today.AddDays(365),
                    reference = "CAL",
                    passed = true,
                },
                Workshop.Quality
            )
        ).Expect(201);
        var serial = await workshop.MountAsync();
        await workshop.CureAsync(serial);
        await workshop.RecordAsync(
            serial,
            "verify",
            new { instruments = new[] { code }, readings = new[] { new { characteristic = "ringHz", value = 900 } } }
        );
        await HoldAsync(code, "reads high", "instrument");
        Assert.Equal("held", (await workshop.GetAsync("instruments")).Expect(200).List().Single(i => i.Text("code") == code).Text("state"));
        var decision = Assert.Single(await DecisionsAsync(code, "instrument"));
        Assert.Equal(code, decision.Text("instrument"));
        Assert.Equal("True", (await LiftAsync(decision.Id(), "proved against the reference")).Expect(201).Text("instrument"));
        Assert.Equal("finished", await workshop.StateOfAsync(serial));
        Assert.Equal(
            "usable",
            (await workshop.GetAsync("instruments")).Expect(200).List().Single(i => i.Text("code") == code).Text("state")
        );
    }

    [Fact]
    public async Task Reason_PIN_and_role_are_asked_for_and_what_is_unknown_is_said()
    {
        var (unit, _) = await HeldAsync("LF-D");
        var id = Assert.Single(await DecisionsAsync("LF-D")).Id();
        (await workshop.PostAsync($"quality/trace/holds/{id}/release", new { reason = "x", pin = "999999" }, Workshop.Quality)).Expect(403);
        (
            await workshop.PostAsync(
                $"quality/trace/holds/{id}/release",
                new { reason = "x", pin = Workshop.PinOf(Workshop.ServiceDesk) },
                Workshop.ServiceDesk
            )
        ).Expect(403);
        Assert.Contains("say why", (await LiftAsync(id, " ")).Problem(400), StringComparison.Ordinal);
        (await LiftAsync(Guid.NewGuid(), "x")).Expect(404);
        var byHand = (await workshop.PostAsync("holds", new { part = unit, reason = "by hand" }, Workshop.Quality)).Expect(201).Id();
        (await LiftAsync(byHand, "x")).Expect(404);
        (await workshop.GetAsync($"quality/trace/holds/{byHand}")).Expect(404);
        (await workshop.GetAsync("quality/trace/holds?what=thing&code=X")).Expect(400);
        (await workshop.GetAsync("quality/trace/holds?what=lot&code=NOTHING")).Expect(404);
        (await workshop.GetAsync($"quality/trace/holds/{id}", Workshop.ServiceDesk)).Expect(403);
        Assert.Equal("on-hold", await workshop.StateOfAsync(unit));
    }

    [Fact]
    public async Task Of_two_who_lift_it_at_once_one_is_told()
    {
        var (unit, _) = await HeldAsync("LF-E");
        var id = Assert.Single(await DecisionsAsync("LF-E")).Id();
        var both = await Task.WhenAll(LiftAsync(id, "one"), LiftAsync(id, "two"));
        Assert.Equal([201, 409], both.Select(b => (int)b.Status).Order());
        Assert.Equal("finished", await workshop.StateOfAsync(unit));
    }

    [Fact]
    public async Task The_trace_page_shows_what_is_lifted_before_it_is_lifted()
    {
        var (unit, _) = await HeldAsync("LF-F");
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        const string path = "/trace?what=lot&code=LF-F";
        var page = (await desk.GetAsync(path)).Expect(200);
        Assert.Contains("4 parts are freed from this hold", page.Words, StringComparison.Ordinal);
        Assert.Contains("The lot itself is freed from this hold too: LF-F", page.Words, StringComparison.Ordinal);
        var form = $"lift-{Assert.Single(await DecisionsAsync("LF-F")).Id()}";
        Assert.Contains(
            "not the PIN",
            (await desk.SendAsync(path, form, ("reason", "seen"), ("_Pin", "999999"))).Expect(403).Words,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "say why",
            (await desk.SendAsync(path, form, ("reason", " "), ("_Pin", Pin))).Expect(400).Words,
            StringComparison.Ordinal
        );
        Assert.Equal("on-hold", await workshop.StateOfAsync(unit));
        var after = (await desk.SendAsync(path, form, ("reason", "seen"), ("_Pin", Pin))).Expect(200);
        Assert.Contains("Lifted: the holds of 4 parts and of 1 lots or instruments", after.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("Held by an earlier decision", after.Words, StringComparison.Ordinal);
        Assert.Equal("finished", await workshop.StateOfAsync(unit));
    }

    /// <summary>
    /// A unit with its capsule and two diaphragms of that film, all on hold; with the serials in the order of their names.
    /// </summary>
    private async Task<(string Unit, IReadOnlyList<string> Parts)> HeldAsync(string film)
    {
        await WorkshopSetUp.LotAsync(workshop, film, "film", new { baseThicknessUm = 6, metalThicknessNm = 40 });
        var unit = await workshop.UnitAsync(
            await workshop.CapsuleAsync(await workshop.DiaphragmAsync(film: film), await workshop.DiaphragmAsync(film: film))
        );
        var held = await HoldAsync(film, "pinholes");
        return (unit, [.. held.List("parts").Select(p => p.GetString()!).Order(StringComparer.Ordinal)]);
    }

    private async Task<System.Text.Json.JsonElement> HoldAsync(string code, string reason, string what = "lot") =>
        (
            await workshop.PostAsync(
                "quality/trace/holds",
                new
                {
                    what,
                    code,
                    reason,
                    pin = Pin,
                },
                Workshop.Quality
            )
        ).Expect(201);

    private async Task<IReadOnlyList<System.Text.Json.JsonElement>> DecisionsAsync(string code, string what = "lot") =>
        (await workshop.GetAsync($"quality/trace/holds?what={what}&code={code}")).Expect(200).List();

    private Task<Reply> LiftAsync(Guid id, string reason) =>
        workshop.PostAsync($"quality/trace/holds/{id}/release", new { reason, pin = Pin }, Workshop.Quality);
}
