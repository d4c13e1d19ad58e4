using System.Text.RegularExpressions;
using System.Xml.Linq;
using Traceability.Web.Tests.Pages;
using static Traceability.Web.Tests.Setup.RevisionApprovalTests;

namespace Traceability.Web.Tests.Setup;

public sealed partial class RevisionPageTests(Workshop w) : IClassFixture<Workshop>
{
    [Fact]
    public async Task Proposed_compared_and_approved_on_the_pages()
    {
        var lead = await DeskClient.SignInAsync(w, Workshop.Lead);
        await w.RouteAsync(Text("page-a", 1, "3"));
        var proposed = (await lead.SendAsync("/setup/routes", "load", ("text", Text("page-a", 2, "5")))).Expect(200);
        Assert.Equal("/setup/routes/TEST-1/page-a/2", proposed.Path);
        Assert.Contains("You wrote this revision, so somebody else must approve it", proposed.Words, StringComparison.Ordinal);
        Assert.Contains(
            "somebody else must approve it",
            (await lead.SendAsync(proposed, "approve", ("reason", "mine"), ("_Pin", Workshop.PinOf(Workshop.Lead)))).Expect(409).Words,
            StringComparison.Ordinal
        );

        var quality = await DeskClient.SignInAsync(w, Workshop.Quality);
        Assert.Contains(
            "1 route revisions wait for approval",
            (await quality.GetAsync("/quality")).Expect(200).Words,
            StringComparison.Ordinal
        );
        var list = (await quality.GetAsync("/setup/routes")).Expect(200);
        Assert.Contains("href=\"/setup/routes/TEST-1/page-a/compare?left=1&amp;right=2\"", list.Html, StringComparison.Ordinal);
        Assert.DoesNotContain("Load a revision", list.Words, StringComparison.Ordinal);
        var compared = (await quality.GetAsync("/setup/routes/TEST-1/page-a/compare?left=1&right=2")).Expect(200);
        Assert.Contains("Characteristic faults upper limit 3 5 changed", compared.Words, StringComparison.Ordinal);

        var page = (await quality.GetAsync("/setup/routes/TEST-1/page-a/2")).Expect(200);
        var wrong = (await quality.SendAsync(page, "approve", ("reason", "tried"), ("_Pin", "986532"))).Expect(403);
        Assert.Contains("not the PIN of Quinn Quality", wrong.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("986532", wrong.Html, StringComparison.Ordinal);
        var approved = (
            await quality.SendAsync(page, "approve", ("reason", "tried on ten"), ("_Pin", Workshop.PinOf(Workshop.Quality)))
        ).Expect(200);
        Assert.Contains("Revision 2 of TEST-1 page-a is approved and in force from", approved.Words, StringComparison.Ordinal);
        Assert.Contains("tried on ten", approved.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("Approve this revision", approved.Words, StringComparison.Ordinal);
        Assert.Contains(
            "0 route revisions wait for approval",
            (await quality.GetAsync("/quality")).Expect(200).Words,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_stage_that_is_new_gone_or_moved_is_said_in_words()
    {
        const string head =
            "model: TEST-1\nkind: page-b\ntitle: Tray\nserialPrefix: T\nauthor: L1\napprovedBy: Q1\neffectiveFrom: 2020-01-01\n";
        await w.RouteAsync(
            $"{head}revision: 1\nstages:\n{Stage("cut", "Cut")}{Stage("wash", "Wash")}{Stage("dry", "Dry")}{Stage("count", "Count")}"
        );
        await w.RouteAsync(
            $"{head}revision: 2\nstages:\n{Stage("wash", "Wash")}{Stage("cut", "Cut")}{Stage("dry", "Dry")}{Stage("pack", "Pack", "esd")}"
        );
        var words = (await (await DeskClient.SignInAsync(w, Workshop.Lead)).GetAsync("/setup/routes/TEST-1/page-b/compare"))
            .Expect(200)
            .Words;
        Assert.Contains("Pack pack added", words, StringComparison.Ordinal);
        Assert.Contains("Boards are sensitive to static", words, StringComparison.Ordinal);
        Assert.Contains("Count count removed", words, StringComparison.Ordinal);
        Assert.Contains("Wash wash the same moved", words, StringComparison.Ordinal);
        Assert.Contains("It followed Cut and now follows nothing (it came first)", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_revision_beside_itself_and_one_that_is_not_there()
    {
        var lead = await DeskClient.SignInAsync(w, Workshop.Lead);
        Assert.Contains(
            "no difference",
            (await lead.GetAsync("/setup/routes/TEST-1/unit/compare?left=1&right=1")).Expect(200).Words,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "no difference",
            (await lead.GetAsync("/setup/routes/TEST-1/unit/compare")).Expect(200).Words,
            StringComparison.Ordinal
        );
        (await lead.GetAsync("/setup/routes/TEST-1/unit/compare?left=1&right=9")).Expect(404);
        (await lead.GetAsync("/setup/routes/TEST-1/unit/compare?left=x&right=1")).Expect(404);
        (await lead.GetAsync("/setup/routes/TEST-1/nothing/compare")).Expect(404);
    }

    [Theory]
    [InlineData("/setup/routes")]
    [InlineData("/setup/routes/TEST-1/unit/1")]
    [InlineData("/setup/routes/TEST-1/unit/compare")]
    public async Task Revisions_are_for_the_workshop_lead_and_the_quality_lead(string path)
    {
        (await (await DeskClient.SignInAsync(w, Workshop.Lead)).GetAsync(path)).Expect(200);
        (await (await DeskClient.SignInAsync(w, Workshop.Quality)).GetAsync(path)).Expect(200);
        (await (await DeskClient.SignInAsync(w, Workshop.Builder)).GetAsync(path)).Expect(403);
    }

    [Fact]
    public async Task The_quality_lead_may_look_but_not_load()
    {
        var lead = await DeskClient.SignInAsync(w, Workshop.Lead);
        var quality = await DeskClient.SignInAsync(w, Workshop.Quality);
        var fields = (await lead.GetAsync("/setup/routes")).Form("load");
        fields["__RequestVerificationToken"] = (await quality.GetAsync("/concessions")).Form("give")["__RequestVerificationToken"];
        fields["text"] = Text("page-c", 1, "3");
        (await quality.PostAsync("/setup/routes", fields)).Expect(403);
        (await w.GetAsync("routes/TEST-1/page-c")).Expect(404);
    }

    [Fact]
    public async Task The_parts_on_a_revision_are_a_click_away()
    {
        await w.RouteAsync(Text("page-d", 1, "3"));
        var serial = await w.RegisterAsync("page-d");
        var lead = await DeskClient.SignInAsync(w, Workshop.Lead);
        var link = System.Net.WebUtility.HtmlDecode(
            LinkToParts().Match((await lead.GetAsync("/setup/routes/TEST-1/page-d/1")).Expect(200).Html).Groups["to"].Value
        );
        Assert.Equal("/parts?kind=page-d&model=TEST-1&revision=1&finished=false", link);
        Assert.Contains(serial, (await lead.GetAsync(link)).Expect(200).Words, StringComparison.Ordinal);
        Assert.DoesNotContain(
            serial,
            (await lead.GetAsync(link.Replace("false", "true", StringComparison.Ordinal))).Expect(200).Words,
            StringComparison.Ordinal
        );
    }

    /// <summary>A field of a route file without its words would show people its name.</summary>
    [Fact]
    public void Every_field_that_is_compared_has_its_words()
    {
        var lines = File.ReadAllText(Source("src/Traceability.Domain/Routes/Comparison/RouteLines.cs"));
        var known = XDocument
            .Load(Source("src/Traceability.Web/Features/Setup/Routes/RoutePageTexts.resx"))
            .Descendants("data")
            .Select(d => d.Attribute("name")!.Value)
            .ToHashSet();
        var fields = FieldNames().Matches(lines).Select(m => m.Groups["field"].Value).ToHashSet();
        Assert.True(fields.Count > 40, $"only {fields.Count} fields were found");
        Assert.DoesNotContain(fields, f => !known.Contains($"Field.{f}"));
        Assert.DoesNotContain(Enum.GetNames<Domain.Routes.Comparison.RouteAspect>(), a => !known.Contains($"Aspect.{a}"));
    }

    private static string Stage(string code, string title, string? caution = null) =>
        $"  - code: {code}\n    title: {title}\n    method: entered-limits\n{(caution is null ? "" : $"    cautions: [{caution}]\n")}";

    private static string Source(string path, [System.Runtime.CompilerServices.CallerFilePath] string here = "") =>
        Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", path);

    [GeneratedRegex("RouteAspect\\.[A-Za-z]+, (?:[^,]+, )?\"(?<field>[A-Za-z]+)\"")]
    private static partial Regex FieldNames();

    [GeneratedRegex("href=\"(?<to>/parts\\?[^\"]*finished=false)\"")]
    private static partial Regex LinkToParts();
}
