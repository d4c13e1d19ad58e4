using Traceability.Web.Tests.Pages;
using Traceability.Web.Tests.Storage;
using static Traceability.Web.Tests.Setup.RevisionApprovalTests;

namespace Traceability.Web.Tests.Setup.Routes;

/// <summary>A proposal that comes to nothing: rejected by somebody else, or withdrawn by its author.</summary>
public sealed class ProposalDecisionTests(Workshop w) : IClassFixture<Workshop>
{
    private async Task ProposeAsync(string kind) => (await w.PostAsync("routes", Yaml(Text(kind, 1, "3")), Workshop.Lead)).Expect(201);

    [Fact]
    public async Task Rejected_by_somebody_else_it_is_never_approved_and_the_next_revision_goes_on_counting()
    {
        await ProposeAsync("end-a");
        var rejected = (await w.PostAsync("routes/TEST-1/end-a/1/rejection", new { reason = "too wide" }, Workshop.Quality)).Expect(201);
        Assert.Equal(("rejected", Workshop.Quality, "too wide"), (rejected.Text("state"), rejected.Text("by"), rejected.Text("reason")));
        var approval = new { reason = "after all", pin = Workshop.PinOf(Workshop.Quality) };
        Assert.Contains(
            "was rejected already: too wide",
            (await w.PostAsync("routes/TEST-1/end-a/1/approval", approval, Workshop.Quality)).Problem(409),
            StringComparison.Ordinal
        );
        var row = (await w.GetAsync("routes/revisions?model=TEST-1&kind=end-a", Workshop.Lead)).Expect(200).GetProperty("items")[0];
        Assert.Equal(("rejected", "too wide"), (row.Text("state"), row.Text("endReason")));
        (await w.PostAsync("routes", Yaml(Text("end-a", 2, "2")), Workshop.Lead)).Expect(201);
    }

    [Fact]
    public async Task Only_its_author_withdraws_it_and_its_author_does_not_reject_it()
    {
        await ProposeAsync("end-b");
        await using var door = BackDoor.Of(w);
        await door.UntouchedByAsync(async () =>
        {
            (await w.PostAsync("routes/TEST-1/end-b/1/withdrawal", new { reason = "no" }, Workshop.Quality)).Expect(403);
            (await w.PostAsync("routes/TEST-1/end-b/1/rejection", new { reason = "no" }, Workshop.Lead)).Expect(409);
            (await w.PostAsync("routes/TEST-1/end-b/1/rejection", new { reason = " " }, Workshop.Quality)).Expect(400);
            (await w.PostAsync("routes/TEST-1/end-b/9/rejection", new { reason = "no" }, Workshop.Quality)).Expect(404);
        });
        var withdrawn = (await w.PostAsync("routes/TEST-1/end-b/1/withdrawal", new { reason = "a slip" }, Workshop.Lead)).Expect(201);
        Assert.Equal("withdrawn", withdrawn.Text("state"));
    }

    [Fact]
    public async Task It_waits_on_the_home_page_and_in_the_menu_of_who_may_decide_and_not_of_its_author()
    {
        await ProposeAsync("end-c");
        var quality = await DeskClient.SignInAsync(w, Workshop.Quality);
        Assert.Contains("routes wait for your approval", (await quality.GetAsync("/")).Expect(200).Words, StringComparison.Ordinal);
        Assert.Contains("waiting for your approval", (await quality.GetAsync("/parts")).Expect(200).Html, StringComparison.Ordinal);
        Assert.Contains("TEST-1, end c", (await quality.GetAsync("/setup/routes")).Expect(200).Words, StringComparison.Ordinal);
        var lead = await DeskClient.SignInAsync(w, Workshop.Lead);
        Assert.DoesNotContain("routes wait for your approval", (await lead.GetAsync("/")).Expect(200).Words, StringComparison.Ordinal);
        Assert.DoesNotContain("waiting for your approval", (await lead.GetAsync("/parts")).Expect(200).Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task On_its_page_others_reject_it_and_its_author_withdraws_it()
    {
        await ProposeAsync("end-d");
        var quality = await DeskClient.SignInAsync(w, Workshop.Quality);
        var page = (await quality.GetAsync("/setup/routes/TEST-1/end-d/1")).Expect(200);
        Assert.DoesNotContain("Withdraw it", page.Words, StringComparison.Ordinal);
        var done = (await quality.SendAsync(page, "reject", ("reason", "name the tool"))).Expect(200);
        Assert.Contains("rejected it: name the tool", done.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("Approve this revision", done.Words, StringComparison.Ordinal);

        await ProposeAsync("end-e");
        var lead = await DeskClient.SignInAsync(w, Workshop.Lead);
        var own = (await lead.GetAsync("/setup/routes/TEST-1/end-e/1")).Expect(200);
        Assert.DoesNotContain("Reject it", own.Words, StringComparison.Ordinal);
        Assert.Contains(
            "withdrew it: a slip",
            (await lead.SendAsync(own, "withdraw", ("reason", "a slip"))).Expect(200).Words,
            StringComparison.Ordinal
        );
    }
}
