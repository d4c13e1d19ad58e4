using Traceability.Web.Tests;
using Traceability.Web.Tests.Demonstration;

namespace Traceability.Browser.Tests;

/// <summary>
/// The two stories of the seed scenario that the quality lead must be able to end within minutes, worked through as QUAL1 would: from the
/// question to the exported list and the hold. The numbers are those that seed-scenario/README.md tells.
/// </summary>
[Collection(InChromium.Name)]
public sealed class SeedStoryTests(Chromium chromium)
{
    private const string Badge = "QUAL1",
        Pin = "3333";

    [Fact]
    public async Task The_film_lot_found_bad_after_shipping_leads_from_the_table_of_lots_to_the_list_and_the_hold()
    {
        var seed = await chromium.SeedAsync();
        await using var screen = await SignedInAsync(seed);

        // Is it this film lot? The first line of the table says so.
        await screen.Page.GotoAsync("/quality/film-lots");
        var first = screen.Page.Locator("main table tbody tr").First;
        Assert.Contains("F-2603", await first.InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("worse", await first.InnerTextAsync(), StringComparison.OrdinalIgnoreCase);
        await first.Locator("th a").ClickAsync();
        await screen.Page.Locator("main a[href='/lots/F-2603']").First.ClickAsync();
        await screen.Page.Locator("a[href='/trace?what=lot&code=F-2603']").First.ClickAsync();

        // Eighteen diaphragms, twelve capsules and ten units; the unit whose capsule was replaced no longer holds the film.
        var rows = Read(await ExportedAsync(screen));
        Assert.Equal(
            (18, 12, 10),
            (rows.Count(r => r["kind"] == "diaphragm"), rows.Count(r => r["kind"] == "capsule"), rows.Count(r => r["kind"] == "unit"))
        );
        Assert.Equal(["UD-0014"], rows.Where(r => r["present"] == "false").Select(r => r["serial"]));
        Assert.Equal(["UD-0013", "UD-0015", "UD-0016", "US-0013", "US-0014", "US-0016", "US-0018"], Units("shipped"));
        Assert.Equal(["UD-0018"], Units("stock"));
        Assert.Equal(["US-0015"], Units("returned"));
        Assert.All(rows.Where(r => r["kind"] == "unit" && r["where"] == "shipped"), r => Assert.NotEqual("", r["customerReference"]));

        // What the hold will touch is counted before it is put: all but UD-0014 and the three scrapped capsules.
        var preview = await screen.Page.Locator("ul.touches").InnerTextAsync();
        Assert.Contains("36 parts get a hold of their own", preview, StringComparison.Ordinal);
        Assert.Contains("7 units are with customers now", preview, StringComparison.Ordinal);
        Assert.Contains("4 are left alone", preview, StringComparison.Ordinal);
        Assert.Equal("finished", await StateOfAsync(seed, "UD-0018"));
        await HoldAsync(screen, "leaks after the humid soak");

        var held = await HeldForAsync(seed, "leaks after the humid soak");
        Assert.Equal(37, held.Count);
        Assert.Contains("F-2603", held);
        Assert.Superset(rows.Where(r => r["kind"] == "unit" && r["present"] == "true").Select(r => r["serial"]).ToHashSet(), held);
        Assert.DoesNotContain("UD-0014", held);
        Assert.Equal(
            ("on-hold", "on-hold", "shipped"),
            (await StateOfAsync(seed, "UD-0018"), await StateOfAsync(seed, "US-0015"), await StateOfAsync(seed, "UD-0013"))
        );
        Assert.Empty(screen.Complaints);

        IEnumerable<string> Units(string where) =>
            rows.Where(r => r["kind"] == "unit" && r["where"] == where && r["present"] == "true")
                .Select(r => r["serial"])
                .Order(StringComparer.Ordinal);
    }

    [Fact]
    public async Task The_instrument_found_drifted_leads_to_what_it_measured_since_its_last_good_calibration_and_that_is_held()
    {
        var seed = await chromium.SeedAsync();
        await using var screen = await SignedInAsync(seed);

        // Which instrument is not to be trusted? The list says it of one.
        await screen.Page.GotoAsync("/instruments");
        Assert.Contains(
            "held",
            await screen.Page.Locator("main table tr", new() { HasText = "CAP-02" }).InnerTextAsync(),
            StringComparison.OrdinalIgnoreCase
        );
        await screen.Page.Locator("main a[href='/instruments/CAP-02']").First.ClickAsync();
        await screen.Page.Locator("a[href='/trace?what=instrument&code=CAP-02']").ClickAsync();
        var since = seed.Today.AddDays(-9 * 7).ToString("d MMM yyyy", System.Globalization.CultureInfo.InvariantCulture);
        Assert.Contains(since, await screen.Page.Locator("dl.facts").InnerTextAsync(), StringComparison.Ordinal);

        // It measured the odd capsules, from week 8 on; the units they are in now are touched with them, the scrapped ones are not held.
        var rows = Read(await ExportedAsync(screen));
        var capsules = rows.Where(r => r["kind"] == "capsule").ToList();
        Assert.All(capsules, r => Assert.Equal((1, "true"), (int.Parse(r["serial"][3..], null) % 2, r["direct"])));
        Assert.Equal((20, 17), (capsules.Count, rows.Count(r => r["kind"] == "unit" && r["direct"] == "false")));
        Assert.Equal(
            ["CD-0017", "CD-0019", "CD-0021", "CD-0023", "CD-0025", "CD-0027", "CD-0029", "CD-0031", "CD-0033", "CD-0101"],
            capsules.Select(r => r["serial"]).Where(s => s[1] == 'D').Order(StringComparer.Ordinal)
        );
        Assert.Equal(11, rows.Count(r => r["kind"] == "unit" && r["where"] == "shipped"));

        var preview = await screen.Page.Locator("ul.touches").InnerTextAsync();
        Assert.Contains("35 parts get a hold of their own", preview, StringComparison.Ordinal);
        Assert.Contains("11 units are with customers now", preview, StringComparison.Ordinal);
        Assert.Contains("The instrument CAP-02 is held too", preview, StringComparison.Ordinal);
        await HoldAsync(screen, "capacitance shown too high");

        var held = await HeldForAsync(seed, "capacitance shown too high");
        Assert.Equal(36, held.Count);
        Assert.Superset(new HashSet<string> { "CAP-02", "UD-0014", "US-0033", "CS-0035" }, held);
        Assert.DoesNotContain("CD-0017", held);
        Assert.Equal(("on-hold", "on-hold"), (await StateOfAsync(seed, "US-0033"), await StateOfAsync(seed, "CS-0035")));
        Assert.Empty(screen.Complaints);
    }

    private async Task<Screen> SignedInAsync(DemoWorkshop seed)
    {
        var screen = await chromium.OpenAsync(at: seed.Address);
        await screen.Page.GotoAsync("/sign-in");
        await screen.Page.Locator("#badge").FillAsync(Badge);
        await screen.Page.Locator("#pin").FillAsync(Pin);
        await screen.Page.Locator("#pin").PressAsync("Enter");
        await screen.Page.Locator("form[action='/sign-out']").WaitForAsync();
        return screen;
    }

    private static async Task<string> ExportedAsync(Screen screen)
    {
        var download = await screen.Page.RunAndWaitForDownloadAsync(() => screen.Page.Locator("a[download]").ClickAsync());
        await using var file = await download.CreateReadStreamAsync();
        using var reader = new StreamReader(file);
        return await reader.ReadToEndAsync();
    }

    /// <summary>The lines of a table whose fields hold neither separators nor quotes, by the names of its columns.</summary>
    private static List<Dictionary<string, string>> Read(string csv)
    {
        var lines = csv.TrimEnd().ReplaceLineEndings("\n").Split('\n').Select(l => l.Split(',')).ToList();
        return [.. lines.Skip(1).Select(l => lines[0].Zip(l).ToDictionary(f => f.First, f => f.Second))];
    }

    private static async Task HoldAsync(Screen screen, string reason)
    {
        await screen.Page.Locator("#hold-reason").FillAsync(reason);
        await screen.Page.Locator("#hold-_Pin").FillAsync(Pin);
        await screen.Page.Locator("form:has(#hold-reason) button[type=submit]").ClickAsync();
        await screen.Page.Locator(".message-ok[role=status]").WaitForAsync();
    }

    private static async Task<HashSet<string>> HeldForAsync(DemoWorkshop seed, string reason) =>
        [
            .. (await seed.GetAsync("holds?open=true&limit=500"))
                .List()
                .Where(h => h.Text("reason").StartsWith(reason, StringComparison.Ordinal))
                .Select(h =>
                    h.Text(
                        h.Has("part") ? "part"
                        : h.Has("lot") ? "lot"
                        : "instrument"
                    )
                ),
        ];

    private static async Task<string> StateOfAsync(DemoWorkshop seed, string serial) =>
        (await seed.GetAsync($"parts/{serial}")).Text("state");
}
