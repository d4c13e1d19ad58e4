namespace Traceability.Web.Tests.Identity;

/// <summary>A session ends when its person signs out or loses a role, not hours later.</summary>
public sealed class SessionEndTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task Signing_out_over_the_API_ends_that_session_and_no_other()
    {
        using var here = await SignInAsync(Workshop.Builder);
        using var there = await SignInAsync(Workshop.Builder);
        Assert.Equal(204, (int)(await here.DeleteAsync("/api/v1/sessions/current")).StatusCode);
        Assert.Equal(401, (int)(await here.GetAsync("/api/v1/stations")).StatusCode);
        Assert.Equal(401, (int)(await here.DeleteAsync("/api/v1/sessions/current")).StatusCode);
        Assert.Equal(200, (int)(await there.GetAsync("/api/v1/stations")).StatusCode);
    }

    [Fact]
    public async Task Who_loses_a_role_is_signed_out_everywhere()
    {
        (await workshop.PostAsync($"people/{Workshop.Importer}/roles", new { role = "service", given = true }, Workshop.Lead)).Expect(200);
        using var session = await SignInAsync(Workshop.Importer);
        (await workshop.PostAsync($"people/{Workshop.Importer}/roles", new { role = "lead", given = false }, Workshop.Lead)).Expect(200);
        Assert.Equal(200, (int)(await session.GetAsync("/api/v1/stations")).StatusCode);
        (await workshop.PostAsync($"people/{Workshop.Importer}/roles", new { role = "service", given = false }, Workshop.Lead)).Expect(200);
        Assert.Equal(401, (int)(await session.GetAsync("/api/v1/stations")).StatusCode);
    }

    private async Task<HttpClient> SignInAsync(string badge)
    {
        var token = (await workshop.PostAsync("sessions", new { badge, pin = Workshop.PinOf(badge) }, null)).Expect(200).Text("token");
        var client = await workshop.ClientAsync(null);
        client.DefaultRequestHeaders.Authorization = new("Bearer", token);
        return client;
    }
}
