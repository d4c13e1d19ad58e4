namespace Traceability.Web.Tests.Identity;

/// <summary>Whoever leaves signs in no more; the last lead and the last quality lead cannot be taken away.</summary>
public sealed class DeactivationTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task A_deactivated_person_is_signed_out_everywhere_and_told_why_until_the_access_is_given_back()
    {
        var session = (await SignInAsync(Workshop.OtherBuilder)).Expect(200).Text("token");
        (await DecideAsync(Workshop.OtherBuilder, "deactivation", "left the workshop")).Expect(200);
        var request = new HttpRequestMessage(HttpMethod.Get, "/api/v1/people");
        request.Headers.Authorization = new("Bearer", session);
        (await workshop.SendAsync(request, null)).Expect(401);
        Assert.Contains("left the workshop", (await SignInAsync(Workshop.OtherBuilder)).Problem(401), StringComparison.Ordinal);
        Assert.DoesNotContain(Workshop.OtherBuilder, await BadgesAsync("people"));
        Assert.Contains(Workshop.OtherBuilder, await BadgesAsync("people?deactivated=true"));
        (await DecideAsync(Workshop.OtherBuilder, "deactivation", "again")).Expect(409);
        (await DecideAsync(Workshop.OtherBuilder, "reactivation", "came back")).Expect(200);
        (await SignInAsync(Workshop.OtherBuilder)).Expect(200);
    }

    [Fact]
    public async Task Whoever_does_not_know_the_PIN_is_not_told_that_the_access_was_ended()
    {
        (await DecideAsync(Workshop.ServiceDesk, "deactivation", "left in anger")).Expect(200);
        var refused = await workshop.PostAsync("sessions", new { badge = Workshop.ServiceDesk, pin = "000000" }, null);
        Assert.DoesNotContain("anger", refused.Problem(401), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_last_lead_and_the_last_quality_lead_cannot_be_deactivated()
    {
        Assert.Contains(
            "only workshop lead",
            (await DecideAsync(Workshop.Lead, "deactivation", "no")).Problem(409),
            StringComparison.Ordinal
        );
        (await DecideAsync(Workshop.Importer, "deactivation", "left")).Expect(200);
        Assert.Contains(
            "only quality lead",
            (await DecideAsync(Workshop.Quality, "deactivation", "no")).Problem(409),
            StringComparison.Ordinal
        );
        (await workshop.PostAsync($"people/{Workshop.Builder}/roles", new { role = "lead", given = true }, Workshop.Lead)).Expect(200);
        Assert.Contains(
            "another workshop lead",
            (await DecideAsync(Workshop.Lead, "deactivation", "no")).Problem(409),
            StringComparison.Ordinal
        );
    }

    private Task<Reply> DecideAsync(string badge, string what, string reason) =>
        workshop.PostAsync($"people/{badge}/{what}", new { reason }, Workshop.Lead);

    private Task<Reply> SignInAsync(string badge) => workshop.PostAsync("sessions", new { badge, pin = Workshop.PinOf(badge) }, null);

    private async Task<IReadOnlyList<string>> BadgesAsync(string path) =>
        (await workshop.GetAsync(path)).Expect(200).Texts("items", "badge");
}
