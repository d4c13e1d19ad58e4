using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Traceability.Persistence.Model;

namespace Traceability.Web.Tests.Pages;

/// <summary>Who is at the station: PINs that nobody sees, sign-ins that end, and what they may do.</summary>
public sealed class StationSignInTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_PIN_is_neither_shown_nor_kept_wherever_it_is_typed()
    {
        const string pin = "73915528";
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.GoAsync("/station");
        foreach (var typed in new[] { pin, Workshop.Builder, pin, "NO", Workshop.Builder, "abc" + pin, "NO" })
        {
            Assert.DoesNotContain(pin, (await visitor.ScanAsync(typed)).Html, StringComparison.Ordinal);
        }

        await using var scope = workshop.Services.CreateAsyncScope();
        var seats = await scope
            .ServiceProvider.GetRequiredService<WorkshopContext>()
            .Set<StationScreen>()
            .Select(s => s.Session)
            .ToListAsync();
        Assert.NotEmpty(seats);
        Assert.DoesNotContain(seats, s => s.Contains(pin, StringComparison.Ordinal));
    }

    [Fact]
    public async Task While_the_PIN_is_asked_the_box_hides_what_is_typed()
    {
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.ScanAsync(Workshop.Builder);
        Assert.Matches("<input id=\"scan\"[^>]*type=\"password\"", visitor.Now.Html);
        await visitor.ScanAsync(Workshop.PinOf(Workshop.Builder));
        Assert.Matches("<input id=\"scan\"[^>]*type=\"text\"", visitor.Now.Html);
    }

    [Fact]
    public async Task A_scan_that_comes_after_the_sign_in_has_ended_is_kept_until_the_PIN_is_typed()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var visitor = await workshop.SignedInByScansAsync();
        await visitor.ScanAsync("BENCH-1", serial, "START", Workshop.Film);
        var token = visitor.Now.Token;
        await EndLatestSessionAsync();
        var asked = await visitor.SendAsync("/station", ("Scan", "850.50"), ("Key", "late"), ("__RequestVerificationToken", token));
        Assert.Contains("Type your PIN again", asked.Prompt, StringComparison.Ordinal);
        Assert.Contains("not recorded yet: 850.50", asked.Prompt, StringComparison.Ordinal);
        Assert.Contains(serial, asked.Text, StringComparison.Ordinal);

        await visitor.ScanAsync(Workshop.PinOf(Workshop.Builder));
        Assert.Matches("<input id=\"scan\"[^>]*value=\"850.50\"", visitor.Now.Html);
        await visitor.ScanAsync("850.50", "DONE");
        Assert.Contains("Mount passed", visitor.Now.Prompt, StringComparison.Ordinal);
        Assert.DoesNotContain("not recorded yet", visitor.Now.Prompt, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_forged_scan_does_nothing()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var visitor = await workshop.SignedInByScansAsync();
        await visitor.ScanAsync("BENCH-1", serial);
        await visitor.ForgeAsync("/station", ("Scan", "START"), ("Key", "forged"));
        Assert.Equal("ready", await workshop.StateOfAsync(serial));
    }

    [Fact]
    public async Task The_bench_survives_a_reload_and_a_sign_out()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var visitor = await workshop.SignedInByScansAsync();
        await visitor.ScanAsync("BENCH-2", serial);
        Assert.Contains(serial, (await visitor.GoAsync("/station")).Text, StringComparison.Ordinal);
        await visitor.SendAsync("/sign-out");
        Assert.Contains("Station BENCH-2", (await visitor.GoAsync("/station")).Text, StringComparison.Ordinal);
        Assert.Contains("Type your PIN again", visitor.Now.Prompt, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_is_no_builder_may_look_but_not_record()
    {
        var serial = await workshop.RegisterAsync("diaphragm");
        var visitor = await Visitor.OpenAsync(workshop);
        await visitor.ScanAsync(Workshop.ServiceDesk, Workshop.PinOf(Workshop.ServiceDesk), "BENCH-1", serial, "START");
        Assert.Contains("not a builder", visitor.Now.Text, StringComparison.Ordinal);
        Assert.Equal("ready", await workshop.StateOfAsync(serial));
    }

    private async Task EndLatestSessionAsync()
    {
        await using var scope = workshop.Services.CreateAsyncScope();
        var sessions = scope.ServiceProvider.GetRequiredService<WorkshopContext>().Set<SignInSession>();
        var latest = await sessions.MaxAsync(s => s.StartedAt);
        await sessions.Where(s => s.StartedAt == latest).ExecuteDeleteAsync();
    }
}
