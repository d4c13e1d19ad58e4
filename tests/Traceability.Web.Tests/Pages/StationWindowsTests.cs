using System.Text.RegularExpressions;

namespace Traceability.Web.Tests.Pages;

/// <summary>
/// A window that was left behind, on the same screen or at another bench, can do no harm: it says so and shows how things stand.
/// </summary>
public sealed class StationWindowsTests(Workshop workshop) : IClassFixture<Workshop>
{
    private const string LeftBehind = "Refused Not taken: this window showed something older.";

    [Fact]
    public async Task A_number_typed_at_a_bench_that_was_left_behind_lands_nowhere()
    {
        var serial = await MeasuringAsync();
        var (behind, ahead) = (await AtBenchAsync(serial), await AtBenchAsync(serial));
        await ahead.ScanAsync("70.5");

        await behind.ScanAsync("71.5");

        Assert.StartsWith(LeftBehind, behind.Now.Prompt, StringComparison.Ordinal);
        Assert.Contains("Humidity of the room: type %", behind.Now.Prompt, StringComparison.Ordinal);
        Assert.Equal(["70.5"], await ReadingsAsync(serial));
        await behind.ScanAsync("45");
        Assert.Equal(["70.5", "45"], await ReadingsAsync(serial));
    }

    [Fact]
    public async Task A_number_typed_in_an_older_window_of_the_same_screen_lands_nowhere()
    {
        var serial = await MeasuringAsync();
        var visitor = await AtBenchAsync(serial);
        var older = visitor.Now;
        await visitor.ScanAsync("70.5");

        await visitor.ScanInAsync(older, "71.5");

        Assert.StartsWith(LeftBehind, visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.Equal(["70.5"], await ReadingsAsync(serial));
    }

    [Fact]
    public async Task A_scan_in_a_window_that_shows_another_part_does_nothing_to_the_part_now_on_the_bench()
    {
        var (first, second) = (await MeasuringAsync(), await MeasuringAsync());
        var visitor = await AtBenchAsync(first);
        var older = visitor.Now;
        await visitor.ScanAsync("CLEAR", second);

        await visitor.ScanInAsync(older, "71.5");

        Assert.StartsWith(LeftBehind, visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.Contains(second, visitor.Now.Text, StringComparison.Ordinal);
        Assert.Empty(await ReadingsAsync(first));
        Assert.Empty(await ReadingsAsync(second));
    }

    [Fact]
    public async Task A_scan_that_does_not_say_what_it_answers_is_not_taken()
    {
        var serial = await MeasuringAsync();
        var visitor = await AtBenchAsync(serial);

        await visitor.SendAsync("/station", ("Scan", "71.5"), ("Key", "without-a-word"));

        Assert.StartsWith(LeftBehind, visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.Empty(await ReadingsAsync(serial));
    }

    [Fact]
    public async Task A_scan_made_ahead_answers_what_the_one_before_it_left_and_nothing_else()
    {
        var serial = await MeasuringAsync();
        var (visitor, other) = (await AtBenchAsync(serial), await AtBenchAsync(serial));
        await visitor.ScanInAsync(visitor.Now, "70.5", "one");
        await visitor.SendAsync("/station", ("Scan", "45"), ("Key", "two"), ("After", "one"));
        Assert.Equal(["70.5", "45"], await ReadingsAsync(serial));

        await other.GoAsync("/station");
        await other.ScanAsync("DONE");
        await visitor.SendAsync("/station", ("Scan", "DONE"), ("Key", "three"), ("After", "two"));
        Assert.StartsWith(LeftBehind, visitor.Now.Prompt, StringComparison.Ordinal);
        await visitor.SendAsync("/station", ("Scan", "START"), ("Key", "four"), ("After", "never sent"));
        Assert.StartsWith(
            LeftBehind.Replace("Refused", "Refused 2 times", StringComparison.Ordinal),
            visitor.Now.Prompt,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_correction_begun_before_somebody_else_closed_the_attempt_is_said_not_to_have_been_made()
    {
        var serial = await MeasuringAsync();
        var (correcting, closing) = (await AtBenchAsync(serial), await AtBenchAsync(serial));
        await correcting.ScanAsync("70.5");
        await correcting.ScanAsync("45", "CORRECT");
        Assert.Contains("was taken as 45", correcting.Now.Prompt, StringComparison.Ordinal);
        await closing.GoAsync("/station");
        await closing.ScanAsync("DONE");

        await correcting.ScanAsync("46");

        Assert.StartsWith(
            "Refused Nothing was corrected: the attempt was ended meanwhile.",
            correcting.Now.Prompt,
            StringComparison.Ordinal
        );
        Assert.Equal(["70.5", "45"], await ReadingsAsync(serial));
    }

    [Fact]
    public async Task A_page_that_is_loaded_again_asks_what_is_missing_now_and_not_what_was_asked_before()
    {
        var serial = await MeasuringAsync();
        var (reloading, other) = (await AtBenchAsync(serial), await AtBenchAsync(serial));
        Assert.Contains("Capacitance: type pF", reloading.Now.Prompt, StringComparison.Ordinal);
        await other.ScanAsync("70.5");

        await reloading.GoAsync("/station");

        Assert.Contains("Humidity of the room: type %", reloading.Now.Prompt, StringComparison.Ordinal);
        Assert.DoesNotContain("Capacitance: type", reloading.Now.Prompt, StringComparison.Ordinal);
        await other.ScanAsync("45", "DONE");
        Assert.DoesNotContain(">DONE<", (await reloading.GoAsync("/station")).Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_sent_from_a_window_that_shows_another_part_is_not_attached_to_the_part_now_on_the_bench()
    {
        var (first, second) = (await CuringAsync(), await CuringAsync());
        var visitor = await AtBenchAsync(first);
        var older = visitor.Now;
        await visitor.ScanAsync("CLEAR", second);

        await visitor.SendFileInAsync(older, "plate-log", "log.csv", workshop.LogOfNow());

        Assert.StartsWith(LeftBehind, visitor.Now.Prompt, StringComparison.Ordinal);
        foreach (var serial in new[] { first, second })
        {
            Assert.DoesNotContain(
                "plate-log",
                (await workshop.GetAsync($"parts/{serial}/history?limit=500")).Expect(200).ToString(),
                StringComparison.Ordinal
            );
        }
    }

    /// <summary>A capsule whose capacitance is being measured.</summary>
    private async Task<string> MeasuringAsync()
    {
        var serial = await workshop.RegisterAsync("capsule");
        var (front, rear) = (await workshop.DiaphragmAsync(900), await workshop.DiaphragmAsync(901));
        await workshop.RecordAsync(
            serial,
            "stack",
            new
            {
                fittings = new object[]
                {
                    new { position = "front", child = front },
                    new { position = "rear", child = rear },
                    new { position = "ring", lot = Workshop.Ring },
                },
            }
        );
        await workshop.OpenAsync(serial, "capacitance");
        return serial;
    }

    private async Task<string> CuringAsync()
    {
        var serial = await workshop.MountAsync();
        await workshop.OpenAsync(serial, "cure");
        return serial;
    }

    private async Task<Visitor> AtBenchAsync(string serial)
    {
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.ScanAsync(Workshop.Builder, Workshop.PinOf(Workshop.Builder), "BENCH-1", serial);
        return visitor;
    }

    /// <summary>What was measured after the stack, as it was entered.</summary>
    private async Task<IReadOnlyList<string>> ReadingsAsync(string serial)
    {
        var history = (await workshop.GetAsync($"parts/{serial}/history?limit=500")).Expect(200).ToString();
        return [.. Regex.Matches(history, "\"(?:capacitancePf|roomHumidityPct)\",\"value\":\"?([0-9.]+)").Select(m => m.Groups[1].Value)];
    }
}
