using System.Globalization;
using Traceability.Domain.Quality.GaugeStudy;
using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Quality;

public sealed class GaugeStudyHttpTests(Workshop workshop) : IClassFixture<Workshop>
{
    private static readonly string[] Parts = ["P1", "P2", "P3"],
        People = [Workshop.Builder, Workshop.OtherBuilder];

    [Fact]
    public async Task A_study_is_designed_measured_and_analysed_as_the_domain_does_and_touches_no_part()
    {
        var parts = (await workshop.GetAsync("parts?limit=500")).Expect(200).List().Count;
        var number = await DesignAsync();
        var values = new List<GaugeReading>();
        var sent = new List<object>();
        foreach (var (part, p) in Parts.Select((x, i) => (x, i)))
        {
            foreach (var (person, a) in People.Select((x, i) => (x, i)))
            {
                for (var trial = 1; trial <= 2; trial++)
                {
                    var value = 70m + (p * 2) + (a * 0.3m) + (trial * 0.1m * (p + a + 1));
                    values.Add(new(part, person, (double)value));
                    sent.Add(
                        new
                        {
                            part,
                            person,
                            trial,
                            value = value.ToString(CultureInfo.InvariantCulture),
                            instrument = "RB-1",
                        }
                    );
                }
            }
        }

        Assert.StartsWith(
            "not enough data",
            (await workshop.GetAsync($"quality/gauge-studies/{number}")).Expect(200).Text("notEnough"),
            StringComparison.Ordinal
        );
        Assert.Equal("0", (await workshop.PostAsync($"quality/gauge-studies/{number}/readings", sent)).Expect(201).Text("missing"));
        var expected = CrossedGaugeStudy.Of(values).Value;
        var result = (await workshop.GetAsync($"quality/gauge-studies/{number.ToLowerInvariant()}")).Expect(200).At("result");
        Assert.Equal(expected.Variation.GaugePercentOfTotal, result.At("gaugePercentOfTotal").GetDouble(), 9);
        Assert.Equal(
            expected.Part.SumOfSquares,
            result.List("variance").Single(v => v.Text("source") == "parts").At("sumOfSquares").GetDouble(),
            9
        );
        Assert.Equal(expected.Variation.GaugePercentOfTolerance(40), result.At("gaugePercentOfTolerance").GetDouble(), 9);
        Assert.Equal(parts, (await workshop.GetAsync("parts?limit=500")).Expect(200).List().Count);
    }

    [Fact]
    public async Task A_study_without_any_spread_says_no_number_that_is_none()
    {
        var number = await DesignAsync();
        var sent =
            from part in Parts
            from person in People
            from trial in new[] { 1, 2 }
            select new
            {
                part,
                person,
                trial,
                value = 5,
            };
        (await workshop.PostAsync($"quality/gauge-studies/{number}/readings", sent)).Expect(201);
        var result = (await workshop.GetAsync($"quality/gauge-studies/{number}")).Expect(200).At("result");
        Assert.False(result.Has("gaugePercentOfTotal"));
        Assert.False(result.Has("distinctCategories"));
    }

    [Fact]
    public async Task A_wrong_reading_is_replaced_with_a_reason_and_stays_to_be_seen()
    {
        var number = await DesignAsync();
        async Task<Reply> TakeAsync(object reading) => await workshop.PostAsync($"quality/gauge-studies/{number}/readings", reading);
        (
            await TakeAsync(
                new
                {
                    part = "P1",
                    person = "b1",
                    trial = 1,
                    value = "7.05",
                }
            )
        ).Expect(201);
        Assert.Contains(
            "was read as 7.05",
            (
                await TakeAsync(
                    new
                    {
                        part = "P1",
                        person = "B1",
                        trial = 1,
                        value = "70.5",
                    }
                )
            ).Problem(409),
            StringComparison.Ordinal
        );
        (
            await TakeAsync(
                new
                {
                    part = "P1",
                    person = "B1",
                    trial = 1,
                    value = "70.5",
                    reason = "point slipped",
                }
            )
        ).Expect(201);
        var readings = (await workshop.GetAsync($"quality/gauge-studies/{number}")).Expect(200).List("readings");
        Assert.Equal(["False", "True"], readings.Select(r => r.Text("counts")));
        (
            await TakeAsync(
                new
                {
                    part = "P9",
                    person = "B1",
                    trial = 1,
                    value = 1,
                }
            )
        ).Expect(400);
        (
            await TakeAsync(
                new
                {
                    part = "P1",
                    person = "Q1",
                    trial = 1,
                    value = 1,
                }
            )
        ).Expect(400);
        (
            await TakeAsync(
                new
                {
                    part = "P1",
                    person = "B2",
                    trial = 3,
                    value = 1,
                }
            )
        ).Expect(400);
        (
            await TakeAsync(
                new
                {
                    part = "P1",
                    person = "B2",
                    trial = 1,
                    value = "x",
                }
            )
        ).Expect(400);
        (
            await TakeAsync(
                new
                {
                    part = "P1",
                    person = "B2",
                    trial = 1,
                    value = 1,
                    instrument = "AN-1",
                }
            )
        ).Expect(400);
        (
            await workshop.PostAsync(
                "quality/gauge-studies/GS-9999/readings",
                new
                {
                    part = "P1",
                    person = "B1",
                    trial = 1,
                    value = 1,
                }
            )
        ).Expect(404);
    }

    [Fact]
    public async Task A_study_that_cannot_be_analysed_is_not_begun()
    {
        async Task RefusedAsync(int status, object study, string badge = Workshop.Quality) =>
            (await workshop.PostAsync("quality/gauge-studies", study, badge)).Expect(status);
        await RefusedAsync(400, Study(parts: ["P1"]));
        await RefusedAsync(400, Study(parts: ["P1", "P1"]));
        await RefusedAsync(400, Study(people: ["B1"]));
        await RefusedAsync(400, Study(people: ["B1", "NOBODY"]));
        await RefusedAsync(400, Study(repeats: 1));
        await RefusedAsync(400, Study(unit: "furlong"));
        await RefusedAsync(403, Study(), Workshop.Builder);
        (await workshop.GetAsync("quality/gauge-studies/GS-9999")).Expect(404);
    }

    [Fact]
    public async Task The_page_asks_for_cell_after_cell_and_then_shows_the_result()
    {
        var number = await DesignAsync();
        var desk = await DeskClient.SignInAsync(workshop, Workshop.Builder);
        var page = (await desk.GetAsync($"/gauge-studies/{number}")).Expect(200);
        Assert.Contains("P1, measured by B1, time 1", page.Words, StringComparison.Ordinal);
        for (var i = 0; i < 12; i++)
        {
            page = (
                await desk.SendAsync(page, "take", ("value", (70 + (i % 3 * 2) + (i * 0.01)).ToString(CultureInfo.InvariantCulture)))
            ).Expect(200);
        }

        Assert.Contains("Analysis of variance", page.Words, StringComparison.Ordinal);
        Assert.Contains(number, (await desk.GetAsync("/gauge-studies")).Expect(200).Words, StringComparison.Ordinal);
        var lead = await DeskClient.SignInAsync(workshop, Workshop.Quality);
        var made = await lead.SendAsync(
            "/gauge-studies",
            "design",
            ("title", "By page"),
            ("characteristic", "ringHz"),
            ("unit", "Hz"),
            ("instrumentKind", "resonance-bench"),
            ("parts", "A\r\nB"),
            ("people", "B1\r\nB2"),
            ("repeats", "2")
        );
        Assert.StartsWith("/gauge-studies/GS-", made.Expect(200).Path, StringComparison.Ordinal);
    }

    private async Task<string> DesignAsync() =>
        (await workshop.PostAsync("quality/gauge-studies", Study(), Workshop.Quality)).Expect(201).Text("number");

    private static object Study(string[]? parts = null, string[]? people = null, int repeats = 2, string unit = "Hz") =>
        new
        {
            title = "Resonance bench",
            characteristic = "ringHz",
            unit,
            instrumentKind = "resonance-bench",
            parts = parts ?? Parts,
            people = people ?? People,
            repeats,
            lower = 880,
            upper = 920,
        };
}
