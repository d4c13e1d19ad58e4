using Traceability.Web.Features.Shared;

namespace Traceability.Web.Tests.Pages;

/// <summary>The pages that lead a new workshop: what is done and next, many at once, the store itself.</summary>
public sealed class FirstHourTests(Workshop w) : IClassFixture<Workshop>
{
    [Fact]
    public async Task Set_up_says_what_is_done_and_why_each_step_is_taken()
    {
        var lead = await DeskClient.SignInAsync(w, Workshop.Lead);
        var page = (await lead.GetAsync("/setup")).Expect(200);
        Assert.Contains("Every record is signed by a person", page.Words, StringComparison.Ordinal);
        Assert.Contains("let the quality lead release them", page.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Set_up_counts_who_may_sign_in_and_not_who_was_deactivated()
    {
        var lead = await DeskClient.SignInAsync(w, Workshop.Lead);
        (await w.PostAsync("people", new { badge = "GONE1", name = "Gone One" }, Workshop.Lead)).Expect(201);
        var active = (await w.GetAsync("people?limit=500", Workshop.Lead)).Expect(200).List().Count;
        Assert.Contains($"People : {active} ", (await lead.GetAsync("/setup")).Expect(200).Words, StringComparison.Ordinal);
        (await w.PostAsync("people/GONE1/deactivation", new { reason = "left" }, Workshop.Lead)).Expect(200);
        Assert.Contains($"People : {active - 1} ", (await lead.GetAsync("/setup")).Expect(200).Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_pasted_table_is_looked_through_first_and_recorded_when_every_line_is_right()
    {
        var lead = await DeskClient.SignInAsync(w, Workshop.Lead);
        var address = "/setup/import?kind=stations";
        var looked = (await lead.SendAsync(address, "look", ("table", "code\ttitle\nPG-1\tBench\nPG-1\tBench again\n"))).Expect(200);
        Assert.Contains("1 place to mend. Nothing was recorded.", looked.Words, StringComparison.Ordinal);
        Assert.Contains("Bench again", looked.Html, StringComparison.Ordinal);

        looked = (await lead.SendAsync(address, "look", ("table", "code\ttitle\nPG-1\tBench\nPG-2\tBench two\n"))).Expect(200);
        Assert.Contains("2 lines, all of them right. Nothing is recorded yet.", looked.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("PG-2", (await w.GetAsync("stations?limit=500")).Body, StringComparison.Ordinal);

        var entered = (await lead.SendAsync(looked, "enter", ("table", "code\ttitle\nPG-1\tBench\nPG-2\tBench two\n"))).Expect(200);
        Assert.Contains("2 lines were recorded.", entered.Words, StringComparison.Ordinal);
        Assert.Contains("PG-2", (await w.GetAsync("stations?limit=500")).Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Several_lots_are_released_by_one_decision_or_none_of_them()
    {
        foreach (var number in (string[])["MANY-1", "MANY-2", "MANY-3"])
        {
            (
                await w.PostAsync(
                    "lots",
                    new
                    {
                        kind = "ring",
                        supplier = "Ring works",
                        supplierLot = number,
                        quantity = 5,
                        unit = "kg",
                        number,
                    },
                    Workshop.Quality
                )
            ).Expect(201);
        }

        var desk = await DeskClient.SignInAsync(w, Workshop.Quality);
        var refused = await desk.PostAsync("/lots/release", await ChosenAsync(desk, "MANY-1", "MANY-9"));
        Assert.Contains("None of the chosen lots was released", refused.Words, StringComparison.Ordinal);
        Assert.Equal("quarantined", (await w.GetAsync("lots/MANY-1")).Expect(200).Text("state"));

        (await desk.PostAsync("/lots/release", await ChosenAsync(desk, "MANY-1", "MANY-2"))).Expect(200);
        Assert.Equal("released", (await w.GetAsync("lots/MANY-1")).Expect(200).Text("state"));
        Assert.Equal("released", (await w.GetAsync("lots/MANY-2")).Expect(200).Text("state"));
        Assert.Equal("quarantined", (await w.GetAsync("lots/MANY-3")).Expect(200).Text("state"));
    }

    private static async Task<IReadOnlyList<KeyValuePair<string, string>>> ChosenAsync(DeskClient desk, params string[] numbers) =>
        [
            .. (await desk.GetAsync("/lots/release")).Expect(200).Form("release"),
            .. numbers.Select(n => KeyValuePair.Create("numbers", n)),
            KeyValuePair.Create("reason", "certificates checked"),
        ];

    [Fact]
    public async Task Operating_says_where_the_records_are_and_what_is_left_on_the_disk()
    {
        var lead = await DeskClient.SignInAsync(w, Workshop.Lead);
        var page = (await lead.GetAsync("/setup/operating")).Expect(200);
        Assert.Contains("entries in the ledger", page.Words, StringComparison.Ordinal);
        Assert.Contains("pg_dump --format=custom", page.Words, StringComparison.Ordinal);
        var builder = await DeskClient.SignInAsync(w, Workshop.Builder);
        (await builder.GetAsync("/setup/operating")).Expect(403);
    }

    /// <summary>A small disk is low by what is left on it, a large one by its share.</summary>
    [Theory]
    [InlineData(2047, 10_000, true)]
    [InlineData(2049, 10_000, false)]
    [InlineData(4999, 100_000, true)]
    [InlineData(5001, 100_000, false)]
    public void Room_is_low_below_two_gigabytes_or_a_twentieth_of_the_disk(long freeMegabytes, long totalMegabytes, bool low) =>
        Assert.Equal(low, new DiskRoom(freeMegabytes << 20, totalMegabytes << 20).IsLow);
}
