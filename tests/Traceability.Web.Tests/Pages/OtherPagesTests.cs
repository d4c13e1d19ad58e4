using System.Net;
using System.Text.RegularExpressions;
using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;
using UglyToad.PdfPig;

namespace Traceability.Web.Tests.Pages;

public sealed class OtherPagesTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_part_is_registered_at_the_page_and_taken_up_at_the_station()
    {
        var visitor = await Visitor.SignedInAsync(workshop);
        await visitor.GoAsync("/parts/new");
        var key = visitor.Now.Field("Key");
        var made = await visitor.SendAsync(
            "/parts/new",
            ("What", $"{Workshop.Model}/diaphragm"),
            ("Serial", "own-31"),
            ("Carrier", PrintedCode.For(CodeKind.Carrier, "TRAY-31").Text),
            ("Key", key)
        );
        Assert.Equal(HttpStatusCode.OK, made.Status);
        Assert.Contains("Registered: OWN-31", made.Text, StringComparison.Ordinal);
        Assert.Equal("TRAY-31", (await workshop.GetAsync("parts/own-31")).Expect(200).Text("carrier"));

        var again = await visitor.SendAsync(
            "/parts/new",
            ("What", $"{Workshop.Model}/diaphragm"),
            ("Serial", "own-31"),
            ("Carrier", PrintedCode.For(CodeKind.Carrier, "TRAY-31").Text),
            ("Key", key)
        );
        Assert.Contains("Registered: OWN-31", again.Text, StringComparison.Ordinal);
        await visitor.SendAsync("/station?handler=TakeUp", ("serial", "OWN-31"));
        Assert.Contains("OWN-31", visitor.Now.Text, StringComparison.Ordinal);
        Assert.Equal("/station", visitor.Now.Path);
    }

    [Fact]
    public async Task A_refused_registration_says_why_and_keeps_what_was_typed()
    {
        var visitor = await Visitor.SignedInAsync(workshop);
        await workshop.RegisterAsync("diaphragm", "TRAY-32");
        await visitor.GoAsync("/parts/new");
        var refused = await visitor.SendAsync(
            "/parts/new",
            ("What", $"{Workshop.Model}/diaphragm"),
            ("Serial", "OWN-32"),
            ("Carrier", "TRAY-32"),
            ("Key", visitor.Now.Field("Key"))
        );
        Assert.Equal(HttpStatusCode.Conflict, refused.Status);
        Assert.Contains("a carrier holds one part at a time", refused.Text, StringComparison.Ordinal);
        Assert.Contains("value=\"OWN-32\"", refused.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_bench_shows_what_is_open_what_waits_and_what_is_ready()
    {
        var (open, curing, ready) = (await workshop.RegisterAsync("diaphragm"), await workshop.MountAsync(), await workshop.MountAsync());
        await workshop.OpenAsync(open, "mount");
        (
            await workshop.PostAsync(
                "loads",
                new
                {
                    stage = "cure",
                    station = "PLATE-1",
                    parts = new[] { curing },
                }
            )
        ).Expect(201);
        var visitor = await Visitor.SignedInAsync(workshop);
        var text = (await visitor.GoAsync("/bench")).Text;
        var order = new[] { "Open, started by me", open, "Curing, soaking, drying, waiting", curing, "Ready for me", ready };
        var places = order.Select(o => text.IndexOf(o, StringComparison.Ordinal)).ToList();
        Assert.All(places, p => Assert.True(p >= 0, text));
        Assert.Equal(places.Order(), places);
        Assert.Matches($@"{curing} Cure running PLATE-1 .*?\(in (1 h 00|59|60) min\)", text);
    }

    [Fact]
    public async Task A_bench_with_nothing_on_it_says_what_to_do_first()
    {
        var empty = new Workshop();
        await empty.InitializeAsync();
        var visitor = await Visitor.SignedInAsync(empty);
        Assert.Contains("Register the first one", (await visitor.GoAsync("/bench")).Text, StringComparison.Ordinal);
        await empty.DisposeAsync();
    }

    [Fact]
    public async Task Labels_carry_the_code_with_its_check_character()
    {
        using var client = await SignedInClientAsync();
        var pdf = await client.GetByteArrayAsync($"/labels?handler=Sheet&kind=lots&code={Workshop.Film}&code={Workshop.Ring}");
        using var document = PdfDocument.Open(pdf);
        var text = string.Join(' ', document.GetPages().Select(p => p.Text));
        Assert.Contains(PrintedCode.For(CodeKind.Lot, Workshop.Film).Text, text, StringComparison.Ordinal);
        Assert.Contains(PrintedCode.For(CodeKind.Lot, Workshop.Ring).Text, text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_part_pages_label_button_leads_to_a_list_in_which_the_part_is_chosen()
    {
        var (first, second, other) = (
            await workshop.RegisterAsync("diaphragm"),
            await workshop.RegisterAsync("diaphragm"),
            await workshop.RegisterAsync("diaphragm")
        );
        var quality = await Visitor.SignedInAsync(workshop, Workshop.Quality);
        Assert.Contains($"/labels?parts={first}", (await quality.GoAsync($"/parts/{first}")).Html, StringComparison.Ordinal);
        var page = (await quality.GoAsync($"/labels?parts={first},{second.ToLowerInvariant()}")).Html;
        Assert.Matches($"value=\"{first}\"[^>]*checked", page);
        Assert.Matches($"value=\"{second}\"[^>]*checked", page);
        Assert.DoesNotMatch($"value=\"{other}\"[^>]*checked", page);
    }

    [Fact]
    public async Task Badges_are_printed_by_the_lead_alone()
    {
        var builder = await Visitor.SignedInAsync(workshop);
        Assert.Equal(HttpStatusCode.NotFound, (await builder.GoAsync("/labels?Kind=badges")).Status);
        var lead = await Visitor.SignedInAsync(workshop, Workshop.Lead);
        Assert.Contains("Bea Builder", (await lead.GoAsync("/labels?Kind=badges")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_action_sheet_holds_every_word_of_the_station()
    {
        using var client = await workshop.ClientAsync(null);
        using var document = PdfDocument.Open(await client.GetByteArrayAsync("/station/actions"));
        var text = string.Join(' ', document.GetPages().Select(p => p.Text));
        Assert.All(
            StationActions.All,
            a => Assert.Contains(PrintedCode.For(CodeKind.Action, a.Word()).Text, text, StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task People_get_problems_as_pages_and_programs_get_them_as_documents()
    {
        var visitor = await Visitor.SignedInAsync(workshop, Workshop.ServiceDesk);
        var missing = await visitor.GoAsync("/no/such/page");
        Assert.Equal(HttpStatusCode.NotFound, missing.Status);
        Assert.Contains("There is no such page", missing.Text, StringComparison.Ordinal);
        var forbidden = await visitor.GoAsync("/parts/new");
        Assert.Equal(HttpStatusCode.Forbidden, forbidden.Status);
        Assert.Contains("not for you to do", forbidden.Text, StringComparison.Ordinal);
        Assert.Equal("/problems/no-such-address", (await workshop.GetAsync("/no/such/page")).Expect(404).Text("type"));
    }

    [Theory]
    [InlineData("/site.css", "text/css")]
    [InlineData("/station.js", "text/javascript")]
    [InlineData("/icon.svg", "image/svg+xml")]
    [InlineData("/fonts/Inter-Regular.ttf", "font/ttf")]
    [InlineData("/fonts/licence.txt", "text/plain")]
    public async Task Files_of_the_pages_are_served(string path, string type)
    {
        using var client = await workshop.ClientAsync(null);
        using var answer = await client.GetAsync(path);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(type, answer.Content.Headers.ContentType!.MediaType);
        Assert.Contains("script-src 'self'", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_page_holds_script_or_style_of_its_own()
    {
        var visitor = await Visitor.SignedInAsync(workshop);
        foreach (var path in new[] { "/station", "/bench", "/parts/new", "/labels", "/sign-in", "/sign-out" })
        {
            var html = (await visitor.GoAsync(path)).Html;
            Assert.DoesNotMatch(new Regex("<script(?![^>]* src=)|<style|\\sstyle=|\\son[a-z]+=", RegexOptions.IgnoreCase), html);
        }
    }

    private async Task<HttpClient> SignedInClientAsync()
    {
        var client = await workshop.ClientAsync(null);
        var visitor = new Visitor(client);
        await visitor.GoAsync("/sign-in");
        await visitor.SendAsync("/sign-in", ("Badge", Workshop.Builder), ("Pin", Workshop.PinOf(Workshop.Builder)));
        return client;
    }
}
