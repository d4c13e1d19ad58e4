using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Station;

/// <summary>What a part is now, as the doors say it.</summary>
internal static class Standings
{
    /// <summary>The station says of a part the word and the reason, and shows no green sign beside it.</summary>
    public static async Task AtTheStationAsync(this Workshop workshop, string serial, string word, string reason)
    {
        var visitor = await Visitor.SignedInAsync(workshop);
        await visitor.ScanAsync(serial);
        var (text, html) = (visitor.Now.Text, visitor.Now.Html[..visitor.Now.Html.IndexOf("id=\"st-side\"", StringComparison.Ordinal)]);
        Assert.Contains(word, text, StringComparison.OrdinalIgnoreCase);
        Assert.Contains(reason, text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("ready to be fitted", text, StringComparison.Ordinal);
        Assert.DoesNotContain("certificate may be issued", text, StringComparison.Ordinal);
        Assert.DoesNotContain("badge-ok", html, StringComparison.Ordinal);
        Assert.DoesNotContain("message-ok", html, StringComparison.Ordinal);
    }

    public static async Task<string> CodeAsync(this Workshop workshop, string serial) =>
        (await workshop.GetAsync($"parts/{serial}")).Expect(200).Text("standing.code");

    public static async Task<System.Text.Json.JsonElement> ListedAsync(this Workshop workshop, string query, string serial) =>
        (await workshop.GetAsync($"parts?{query}&limit=500")).Expect(200).List().Single(p => p.Text("serial") == serial);

    public static async Task<string> InListAsync(this Workshop workshop, string query, string serial) =>
        (await workshop.ListedAsync(query, serial)).Text("standing.code");

    public static async Task<IEnumerable<string>> TracedAsync(this Workshop workshop, string lot) =>
        (await workshop.GetAsync($"quality/trace?what=lot&code={lot}")).Expect(200).List().Select(p => p.Text("standing.code"));

    public static async Task FilmAsync(this Workshop workshop, string number)
    {
        var lot = new
        {
            number,
            kind = "film",
            supplier = "Invented Films",
            supplierLot = $"melt {number}",
            quantity = 10,
            unit = "m",
            film = new { baseThicknessUm = 6, metalThicknessNm = 40 },
        };
        (await workshop.PostAsync("lots", lot, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync($"lots/{number}/release", new { reason = "seen" }, Workshop.Quality)).Expect(200);
    }

    public static async Task<string> ShippedAsync(this Workshop workshop, string unit, string reference)
    {
        (await workshop.PostAsync($"parts/{unit}/certificates", null, Workshop.Quality)).Expect(201);
        (await workshop.PostAsync($"parts/{unit}/shipments", new { customerReference = reference }, Workshop.Quality)).Expect(201);
        return unit;
    }
}
