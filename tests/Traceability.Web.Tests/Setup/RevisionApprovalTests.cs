using System.Text;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Tests.Storage;

namespace Traceability.Web.Tests.Setup;

/// <summary>
/// A proposed revision is used by no part until somebody other than its author has approved it. Each test has a kind of part of its own.
/// </summary>
public sealed class RevisionApprovalTests(Workshop w) : IClassFixture<Workshop>
{
    private static readonly string QualityPin = Workshop.PinOf(Workshop.Quality);

    /// <summary>A short route; without an approver it can only be proposed.</summary>
    public static string Text(
        string kind,
        int revision,
        string upper,
        string author = Workshop.Lead,
        string? approver = Workshop.Quality,
        string from = "2020-01-01"
    ) =>
        $"model: TEST-1\nkind: {kind}\nrevision: {revision}\ntitle: Tray {kind}\nserialPrefix: T\nauthor:"
        + $" {author}\n{(approver is null ? "" : $"approvedBy: {approver}\n")}effectiveFrom: {from}\nstages:\n"
        + $"  - code: look\n    title: Look at it\n    method: entered-limits\n    characteristics:\n      - {{name: faults, label:"
        + $" Faults, unit: count, upper: {upper}}}\n";

    public static StringContent Yaml(string text) => new(text, Encoding.UTF8, "text/yaml");

    [Fact]
    public async Task A_proposal_is_not_used_then_approved_it_is_taken_by_the_next_part_and_old_parts_keep_theirs()
    {
        await LoadAsync(Text("tray-a", 1, "3"));
        var old = await RegisterAsync("tray-a");
        var proposed = (await w.PostAsync("routes", Yaml(Text("tray-a", 2, "5", approver: null)), Workshop.Lead)).Expect(201);
        Assert.Equal(("2", "proposed"), (proposed.Text("revision"), proposed.Text("state")));
        Assert.Equal("TEST-1/tray-a/1", (await RegisterAsync("tray-a")).Text("route"));
        Assert.Equal("1", (await w.GetAsync("routes/TEST-1/tray-a")).Expect(200).Text("revision"));

        var approved = (await ApproveAsync("tray-a", 2)).Expect(201);
        Assert.Equal(
            (Workshop.Quality, Today(), "tried on ten parts"),
            (approved.Text("approvedBy"), approved.Text("effectiveFrom"), approved.Text("reason"))
        );
        var inForce = (await w.GetAsync("routes/TEST-1/tray-a")).Expect(200);
        Assert.Equal(
            ("2", Workshop.Quality, Today()),
            (inForce.Text("revision"), inForce.Text("approvedBy"), inForce.Text("effectiveFrom"))
        );
        Assert.Equal("TEST-1/tray-a/2", (await RegisterAsync("tray-a")).Text("route"));
        Assert.Equal("TEST-1/tray-a/1", (await w.GetAsync($"parts/{old.Text("serial")}")).Expect(200).Text("route"));
        await w.RecordAsync(old.Text("serial"), "look", new { readings = new[] { new { characteristic = "faults", value = 4 } } });
        Assert.Equal("nonconforming", await w.StateOfAsync(old.Text("serial")));
    }

    [Fact]
    public async Task Without_an_approved_revision_no_part_can_be_registered()
    {
        await ProposeAsync(Text("tray-b", 1, "3", approver: null));
        Assert.Contains(
            "there is no route for kind 'tray-b'",
            (await w.PostAsync("parts", new { kind = "tray-b", model = Workshop.Model })).Problem(400),
            StringComparison.Ordinal
        );
        (await w.GetAsync("routes/TEST-1/tray-b")).Expect(404);
        Assert.DoesNotContain("tray-b", (await w.GetAsync("routes")).Expect(200).Texts("items", "kind"));
        (await ApproveAsync("tray-b", 1)).Expect(201);
        await RegisterAsync("tray-b");
    }

    [Fact]
    public async Task Its_author_may_not_approve_it_whatever_their_role()
    {
        await ProposeAsync(Text("tray-c", 1, "3", author: Workshop.Quality, approver: null));
        await using var door = BackDoor.Of(w);
        await door.UntouchedByAsync(async () =>
            Assert.Contains(
                "Quinn Quality wrote revision 1 of TEST-1/tray-c; somebody else must approve it",
                (await ApproveAsync("tray-c", 1)).Problem(409),
                StringComparison.Ordinal
            )
        );
        Assert.Equal(Workshop.Lead, (await ApproveAsync("tray-c", 1, Workshop.Lead)).Expect(201).Text("approvedBy"));
    }

    [Fact]
    public async Task It_takes_the_PIN_a_reason_and_the_role()
    {
        await ProposeAsync(Text("tray-d", 1, "3", approver: null));
        Assert.Contains(
            "not the PIN of Quinn Quality",
            (await ApproveAsync("tray-d", 1, pin: "999999")).Problem(403),
            StringComparison.Ordinal
        );
        (await ApproveAsync("tray-d", 1, reason: " ")).Expect(400);
        (await ApproveAsync("tray-d", 1, Workshop.Builder)).Expect(403);
        (await ApproveAsync("tray-d", 7)).Expect(404);
        Assert.Equal("proposed", Assert.Single(await RevisionsAsync("tray-d")).Text("state"));
        (await ApproveAsync("tray-d", 1)).Expect(201);
        Assert.Contains("approved already", (await ApproveAsync("tray-d", 1)).Problem(409), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_two_who_approve_at_once_one_does()
    {
        await ProposeAsync(Text("tray-e", 1, "3", author: Workshop.Builder, approver: null));
        var answers = await Task.WhenAll(ApproveAsync("tray-e", 1), ApproveAsync("tray-e", 1, Workshop.Lead));
        Assert.Equal([201, 409], answers.Select(a => (int)a.Status).Order());
    }

    [Fact]
    public async Task A_file_that_names_its_approver_is_a_proposal_until_that_person_has_spoken()
    {
        var loaded = (await w.PostAsync("routes", Yaml(Text("tray-f", 1, "3")), Workshop.Lead)).Expect(201);
        Assert.Equal("proposed", loaded.Text("state"));
        Assert.Contains(
            "there is no route for kind 'tray-f'",
            (await w.PostAsync("parts", new { kind = "tray-f", model = Workshop.Model })).Problem(400),
            StringComparison.Ordinal
        );
        Assert.Equal("proposed", Assert.Single(await RevisionsAsync("tray-f")).Text("state"));
        Assert.Contains(
            "The file asks Q1",
            (await (await Pages.DeskClient.SignInAsync(w, Workshop.Quality)).GetAsync("/setup/routes/TEST-1/tray-f/1")).Expect(200).Words,
            StringComparison.Ordinal
        );
        Assert.Equal("2020-01-01", (await ApproveAsync("tray-f", 1)).Expect(201).Text("effectiveFrom"));
        Assert.Equal(Workshop.Quality, (await w.GetAsync("routes/TEST-1/tray-f")).Expect(200).Text("approvedBy"));
        await RegisterAsync("tray-f");
        Assert.Contains(
            "nobody has the badge 'X9'",
            (await w.PostAsync("routes", Yaml(Text("tray-f", 2, "3", author: "X9", approver: null)), Workshop.Lead)).Problem(400),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "nobody has the badge 'X9'",
            (await w.PostAsync("routes", Yaml(Text("tray-f", 2, "3", approver: "X9")), Workshop.Lead)).Problem(400),
            StringComparison.Ordinal
        );
        (await w.PostAsync("routes", Yaml(Text("tray-f", 2, "3", approver: null)), Workshop.Quality)).Expect(403);
    }

    [Fact]
    public async Task An_approval_given_before_its_day_waits_for_it()
    {
        await LoadAsync(Text("tray-g", 1, "3"));
        var tomorrow = DateOnly
            .FromDateTime(w.Clock.GetUtcNow().UtcDateTime)
            .AddDays(1)
            .ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        await ProposeAsync(Text("tray-g", 2, "3", approver: null, from: tomorrow));
        Assert.Equal(tomorrow, (await ApproveAsync("tray-g", 2)).Expect(201).Text("effectiveFrom"));
        Assert.Equal(["waiting", "current"], (await RevisionsAsync("tray-g")).Select(r => r.Text("state")));
        Assert.Equal("TEST-1/tray-g/1", (await RegisterAsync("tray-g")).Text("route"));
        w.Clock.Pass(TimeSpan.FromDays(1));
        Assert.Equal("TEST-1/tray-g/2", (await RegisterAsync("tray-g")).Text("route"));
        Assert.Equal(["current", "superseded"], (await RevisionsAsync("tray-g")).Select(r => r.Text("state")));
    }

    [Fact]
    public async Task A_proposal_that_a_later_approved_revision_has_passed_over_is_not_approved()
    {
        await ProposeAsync(Text("tray-h", 1, "3", approver: null));
        await LoadAsync(Text("tray-h", 2, "4"));
        Assert.Contains("would never be used", (await ApproveAsync("tray-h", 1)).Problem(409), StringComparison.Ordinal);
        Assert.Equal(["current", "superseded"], (await RevisionsAsync("tray-h")).Select(r => r.Text("state")));
    }

    /// <summary>
    /// Two shelves stand for two instances of the service on one database; both have looked at the proposal before it was approved.
    /// </summary>
    [Fact]
    public async Task Another_instance_sees_the_approval_at_once()
    {
        await LoadAsync(Text("tray-i", 1, "3"));
        await ProposeAsync(Text("tray-i", 2, "5", approver: null));
        await using var scope = w.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<WorkshopContext>();
        var (other, day) = (new RouteShelf(), DateOnly.FromDateTime(w.Clock.GetUtcNow().UtcDateTime));
        var proposal = db.Set<Domain.Records.RouteRevision>().Single(r => r.Kind == "tray-i" && r.Revision == 2).Id;
        Assert.Equal("", (await other.GetAsync(db, proposal, default)).ApprovedBy);
        Assert.Equal(1, (await other.InForceAsync(db, Workshop.Model, "tray-i", day, default))!.Value.Route.Revision);
        (await ApproveAsync("tray-i", 2)).Expect(201);
        var inForce = (await other.InForceAsync(db, Workshop.Model, "tray-i", day, default))!.Value.Route;
        Assert.Equal((2, Workshop.Quality, day), (inForce.Revision, inForce.ApprovedBy, inForce.EffectiveFrom));
        Assert.Equal(2, (await other.AllInForceAsync(db, day, default)).Single(r => r.Kind == "tray-i").Revision);
    }

    [Fact]
    public async Task Every_revision_says_how_many_parts_are_on_it_and_the_parts_list_has_them()
    {
        await LoadAsync(Text("tray-j", 1, "3"));
        var (done, waiting) = ((await RegisterAsync("tray-j")).Text("serial"), (await RegisterAsync("tray-j")).Text("serial"));
        await w.RecordAsync(done, "look", new { readings = new[] { new { characteristic = "faults", value = 0 } } });
        await LoadAsync(Text("tray-j", 2, "4"));
        var later = (await RegisterAsync("tray-j")).Text("serial");
        var rows = await RevisionsAsync("tray-j");
        Assert.Equal(("2", "1", "0"), (rows[0].Text("revision"), rows[0].Text("partsInWork"), rows[0].Text("partsFinished")));
        Assert.Equal(("1", "1", "1"), (rows[1].Text("revision"), rows[1].Text("partsInWork"), rows[1].Text("partsFinished")));
        Assert.Equal([waiting], (await w.GetAsync("parts?kind=tray-j&revision=1&finished=false")).Expect(200).Texts("items", "serial"));
        Assert.Equal([done], (await w.GetAsync("parts?kind=tray-j&revision=1&finished=true")).Expect(200).Texts("items", "serial"));
        Assert.Equal([later], (await w.GetAsync("parts?kind=tray-j&revision=2")).Expect(200).Texts("items", "serial"));
        (await w.GetAsync("routes/revisions", Workshop.Builder)).Expect(403);
    }

    [Fact]
    public async Task Two_revisions_are_compared_over_HTTP()
    {
        await LoadAsync(Text("tray-k", 1, "3"));
        await ProposeAsync(Text("tray-k", 2, "5", approver: null));
        var compared = (await w.GetAsync("routes/TEST-1/tray-k/comparison?left=1&right=2")).Expect(200);
        var line = Assert.Single(Assert.Single(compared.List("stages")).List("lines"));
        Assert.Equal(
            ("characteristic", "faults", "upper", "3", "5", "changed"),
            (line.Text("about"), line.Text("item"), line.Text("field"), line.Text("left"), line.Text("right"), line.Text("difference"))
        );
        Assert.False((await w.GetAsync("routes/TEST-1/tray-k/comparison?left=2&right=2")).Expect(200).At("differs").GetBoolean());
        (await w.GetAsync("routes/TEST-1/tray-k/comparison?left=1&right=9")).Expect(404);
        (await w.GetAsync("routes/TEST-1/tray-k/comparison?left=one&right=2")).Expect(400);
        (await w.GetAsync("routes/TEST-1/tray-k/comparison?left=1&right=2", Workshop.Builder)).Expect(403);
    }

    private string Today() => w.Clock.GetUtcNow().UtcDateTime.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private Task LoadAsync(string text) => w.RouteAsync(text);

    private async Task ProposeAsync(string text) => (await w.PostAsync("routes", Yaml(text), Workshop.Lead)).Expect(201);

    private async Task<JsonElement> RegisterAsync(string kind) =>
        (await w.PostAsync("parts", new { kind, model = Workshop.Model })).Expect(201);

    private async Task<IReadOnlyList<JsonElement>> RevisionsAsync(string kind) =>
        (await w.GetAsync($"routes/revisions?model=TEST-1&kind={kind}")).Expect(200).List();

    private Task<Reply> ApproveAsync(
        string kind,
        int revision,
        string badge = Workshop.Quality,
        string? pin = null,
        string reason = "tried on ten parts"
    ) =>
        w.PostAsync(
            $"routes/TEST-1/{kind}/{revision}/approval",
            new { reason, pin = pin ?? (badge == Workshop.Quality ? QualityPin : Workshop.PinOf(badge)) },
            badge
        );
}
