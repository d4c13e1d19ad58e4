namespace Traceability.Web.Tests.Pages;

/// <summary>What the station says comes next is what would be accepted, and nothing is called in order that is not.</summary>
public sealed class StationPromptTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_stage_is_closed_by_scan_without_the_values_that_its_route_does_not_require()
    {
        var serial = await RegisterAsync(
            "OPTIONAL-1",
            """
              - code: measure
                title: Measure
                method: entered-limits
                characteristics:
                  - {name: noiseUv, label: Noise, unit: uV, upper: 5, required: false}
                  - {name: gainDb, label: Gain, unit: dB, lower: -2, upper: -1}
                  - {name: humDb, label: Hum, unit: dB, upper: -60, required: false}
            """
        );
        var visitor = await AtBenchAsync(serial, "START");
        Assert.Contains("Gain: type dB", visitor.Now.Prompt, StringComparison.Ordinal);
        await visitor.ScanAsync("-1.5");
        const string Done = "Nothing is missing. Scan DONE. Not required: Noise (at most 5 µV).";
        Assert.Contains(Done, visitor.Now.Prompt, StringComparison.Ordinal);
        await visitor.ScanAsync("2.5");
        Assert.Contains("Noise 2.5 µV: inside", visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.Contains("Not required: Hum", visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.DoesNotContain(
            "missing",
            visitor.Now.Text[visitor.Now.Text.IndexOf("What belongs", StringComparison.Ordinal)..],
            StringComparison.Ordinal
        );

        await visitor.ScanAsync("DONE");

        Assert.Contains("Measure passed.", visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.Equal("finished", await workshop.StateOfAsync(serial));
    }

    [Fact]
    public async Task A_cure_that_has_just_begun_says_until_when_and_foretells_nothing()
    {
        var serial = await RegisterAsync(
            "CURE-1",
            """
              - code: cure
                title: Cure
                method: cure
                minimumOpenMinutes: 60
                characteristics:
                  - {name: plateMinutes, label: Time on the plate, unit: min, lower: 60, entered: false}
            """
        );
        var visitor = await AtBenchAsync(serial, "START");

        Assert.Matches(@"Wait Nothing is missing\. It lasts until \d\d:\d\d, in 60 min: scan DONE then\.", visitor.Now.Prompt);
        Assert.DoesNotContain("As it stands", visitor.Now.Text, StringComparison.Ordinal);
        workshop.Clock.Pass(TimeSpan.FromMinutes(61));
        await visitor.GoAsync("/station");
        Assert.Contains("Nothing is missing. Scan DONE.", visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.Contains("As it stands pass", visitor.Now.Text, StringComparison.Ordinal);
        Assert.Contains("Cure passed", (await visitor.ScanAsync("DONE")).Prompt, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_run_that_may_not_end_yet_says_until_when()
    {
        var serial = await RegisterAsync(
            "CURE-2",
            """
              - {code: cure, title: Cure, method: entered-limits, loads: true, minimumOpenMinutes: 60}
            """
        );
        var visitor = await AtBenchAsync(serial, "LOAD-START", serial);

        Assert.Contains("in 60 min: scan LOAD-CLOSE then.", visitor.Now.Prompt, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_a_value_must_be_corrected_before_the_stage_can_close_the_station_says_CORRECT_and_not_DONE()
    {
        var serial = await RegisterAsync(
            "BOND-1",
            """
              - code: bond
                title: Bond
                method: bond
                slots:
                  - {position: adhesive, lotKind: insulating-ring}
                characteristics:
                  - {name: minutesSinceMixing, label: Minutes since mixing, unit: min, upper: 45}
                  - {name: potLifeLeftMinutes, label: Pot life left, unit: min, lower: 0, entered: false}
                parameters:
                  numbers: {potLifeMinutes: 45}
            """
        );
        var visitor = await AtBenchAsync(serial, "START", Workshop.Ring, "-5");

        Assert.Contains("CORRECT", visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.DoesNotContain("Scan DONE", visitor.Now.Prompt, StringComparison.Ordinal);
        await visitor.ScanAsync("CORRECT", "5", "MISTYPED");
        Assert.Contains("Nothing is missing. Scan DONE.", visitor.Now.Prompt, StringComparison.Ordinal);
    }

    [Fact]
    public async Task With_a_value_outside_its_limits_the_station_does_not_say_that_nothing_is_missing()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var visitor = await AtBenchAsync(serial, "START", Workshop.Film, "650");

        Assert.Contains("Coarse resonance 650 Hz: OUTSIDE", visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.Contains(
            "Coarse resonance is outside: scan CORRECT if it was mistyped, DONE if it is so.",
            visitor.Now.Prompt,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("Nothing is missing", visitor.Now.Prompt, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_bars_the_closing_is_said_before_it_is_tried()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var visitor = await AtBenchAsync(serial, "START", Workshop.Film, "850");
        Assert.Contains("Nothing is missing. Scan DONE.", visitor.Now.Prompt, StringComparison.Ordinal);
        (await workshop.PostAsync("holds", new { part = serial, reason = "looked at again" }, Workshop.Quality)).Expect(201);

        await visitor.GoAsync("/station");

        Assert.Contains("hold", visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.DoesNotContain("Scan DONE", visitor.Now.Prompt, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_own_badge_at_the_PIN_prompt_counts_as_no_wrong_PIN()
    {
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.ScanAsync(Workshop.OtherBuilder);
        for (var again = 0; again < 6; again++)
        {
            Assert.StartsWith("Next Type your PIN.", (await visitor.ScanAsync(Workshop.OtherBuilder)).Prompt, StringComparison.Ordinal);
        }

        await visitor.ScanAsync(Workshop.PinOf(Workshop.OtherBuilder));
        Assert.Contains("Signed in", visitor.Now.Prompt, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_same_refusal_twice_is_told_from_the_first()
    {
        var visitor = await Visitor.OpenAsync(workshop);
        var first = (await visitor.ScanAsync("4711")).Prompt;
        var second = (await visitor.ScanAsync("4711")).Prompt;
        var third = (await visitor.ScanAsync("4711")).Prompt;

        Assert.Equal(3, new[] { first, second, third }.Distinct().Count());
        Assert.Equal(first, (await visitor.ScanAsync(Workshop.Builder, "NO", "4711")).Prompt);
    }

    private async Task<string> RegisterAsync(string model, string stages)
    {
        var route = $"""
            model: {model}
            kind: diaphragm
            title: {model}
            serialPrefix: {model[..2]}
            author: L1
            approvedBy: Q1
            effectiveFrom: 2020-01-01
            stages:
            {stages}
            """;
        await workshop.RouteAsync(route);
        return (await workshop.PostAsync("parts", new { kind = "diaphragm", model })).Expect(201).Text("serial");
    }

    private async Task<Visitor> AtBenchAsync(params string[] scans)
    {
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.ScanAsync(Workshop.Builder, Workshop.PinOf(Workshop.Builder), "BENCH-1");
        await visitor.ScanAsync(scans);
        return visitor;
    }
}
