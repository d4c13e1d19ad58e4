namespace Traceability.Web.Tests.Identity;

/// <summary>
/// A workshop without a lead lets nobody in any more, one without a quality lead lets nothing out: the last one keeps the role.
/// </summary>
public sealed class LastOfRoleTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task The_last_leads_role_cannot_be_taken_away()
    {
        Assert.Contains("only workshop lead", (await TakeAsync(Workshop.Lead, "lead")).Problem(409), StringComparison.Ordinal);
        (await workshop.PostAsync($"people/{Workshop.Builder}/roles", new { role = "lead", given = true }, Workshop.Lead)).Expect(200);
        (await TakeAsync(Workshop.Builder, "lead")).Expect(200);
        (await TakeAsync(Workshop.Lead, "lead")).Expect(409);
    }

    [Fact]
    public async Task The_last_quality_leads_role_cannot_be_taken_away()
    {
        (await TakeAsync(Workshop.Importer, "quality")).Expect(200);
        Assert.Contains("only quality lead", (await TakeAsync(Workshop.Quality, "quality")).Problem(409), StringComparison.Ordinal);
        (await TakeAsync(Workshop.Quality, "service")).Expect(200);
    }

    private Task<Reply> TakeAsync(string badge, string role) =>
        workshop.PostAsync($"people/{badge}/roles", new { role, given = false }, Workshop.Lead);
}

/// <summary>A workshop of its own, in which each of two leads takes the other's role at the same moment.</summary>
public sealed class TwoLeadsTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public async Task Of_two_leads_who_take_each_others_role_at_once_one_stays_lead()
    {
        for (var round = 0; round < 5; round++)
        {
            Assert.Equal(200, await ChangeAsync(Workshop.Lead, Workshop.OtherBuilder, given: true));
            var statuses = await Task.WhenAll(
                ChangeAsync(Workshop.Lead, Workshop.OtherBuilder, given: false),
                ChangeAsync(Workshop.OtherBuilder, Workshop.Lead, given: false)
            );
            Assert.Equal([200, 409], statuses.Order());
            var left = (await workshop.GetAsync("people"))
                .Expect(200)
                .List()
                .Where(p => p.List("roles").Any(r => r.GetString() == "lead"))
                .Select(p => p.Text("badge"));
            if (Assert.Single(left) != Workshop.Lead)
            {
                Assert.Equal(200, await ChangeAsync(Workshop.OtherBuilder, Workshop.Lead, given: true));
                Assert.Equal(200, await ChangeAsync(Workshop.Lead, Workshop.OtherBuilder, given: false));
            }
        }
    }

    /// <summary>
    /// With a fresh sign-in, because losing a role has ended the one before. Signed out by the other just now is as good as refused.
    /// </summary>
    private async Task<int> ChangeAsync(string by, string whose, bool given)
    {
        var token = (await workshop.PostAsync("sessions", new { badge = by, pin = Workshop.PinOf(by) }, null)).Expect(200).Text("token");
        var request = new HttpRequestMessage(HttpMethod.Post, $"/api/v1/people/{whose}/roles")
        {
            Content = System.Net.Http.Json.JsonContent.Create(new { role = "lead", given }),
        };
        request.Headers.Authorization = new("Bearer", token);
        var status = (int)(await workshop.SendAsync(request, null)).Status;
        return status is 401 or 403 ? 409 : status;
    }
}
