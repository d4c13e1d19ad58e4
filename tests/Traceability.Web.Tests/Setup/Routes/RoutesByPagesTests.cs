using System.Globalization;
using Traceability.Domain.Stages;
using Traceability.Web.Tests.Pages;

namespace Traceability.Web.Tests.Setup.Routes;

/// <summary>Routes begun from an example and edited without a line of YAML.</summary>
public sealed class RoutesByPagesTests(Workshop w) : IClassFixture<Workshop>
{
    [Fact]
    public async Task From_an_example_all_routes_of_a_model_are_proposed_by_who_asks()
    {
        var lead = await DeskClient.SignInAsync(w, Workshop.Lead);
        var start = (await lead.GetAsync("/routes/new")).Expect(200);
        var done = (
            await lead.SendAsync(
                start,
                "example",
                ("design", "dual"),
                ("model", "M-80"),
                ("letters", "k"),
                ("kinds", "capsule"),
                ("film", "true")
            )
        ).Expect(200);
        Assert.Contains("Proposed: ANY film-lot, M-80 capsule.", done.Words, StringComparison.Ordinal);
        var page = (await lead.GetAsync("/setup/routes/M-80/capsule/1")).Expect(200);
        Assert.Contains("proposed", page.Words, StringComparison.Ordinal);
        Assert.Contains(Workshop.Lead, page.Words, StringComparison.Ordinal);
        var file = (await lead.GetAsync("/setup/routes/M-80/capsule/1?handler=File")).Html;
        Assert.Contains("serialPrefix: CK\n", file, StringComparison.Ordinal);
        Assert.DoesNotContain("approvedBy", file, StringComparison.Ordinal);
        Assert.DoesNotContain("TARN", file, StringComparison.Ordinal);

        var again = (
            await lead.SendAsync("/routes/new", "example", ("design", "dual"), ("model", "M-80"), ("letters", "K"), ("kinds", "capsule"))
        ).Expect(400);
        Assert.Contains("The model M-80 has routes for capsule already", again.Words, StringComparison.Ordinal);
        Assert.Contains("value=\"M-80\"", again.Html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("model", "M 80", "without spaces")]
    [InlineData("letters", "K1", "one or two letters")]
    [InlineData("design", "triple", "Choose the design")]
    public async Task What_an_example_cannot_be_made_of_is_said_at_its_field_and_nothing_is_kept(string field, string value, string words)
    {
        var lead = await DeskClient.SignInAsync(w, Workshop.Lead);
        (string, string)[] typed = [("design", "dual"), ("model", "M-81"), ("letters", "K"), ("kinds", "unit"), (field, value)];
        var refused = (await lead.SendAsync("/routes/new", "example", typed)).Expect(400);
        Assert.Contains(words, refused.Words, StringComparison.Ordinal);
        (await lead.GetAsync("/setup/routes/M-81/unit/1")).Expect(404);
    }

    [Fact]
    public async Task A_stage_is_added_named_limited_and_moved_and_what_is_proposed_reads_back_as_the_same_revision()
    {
        var editor = await RouteEditor.OpenAsync(w, Workshop.Lead, "/routes/M-90/pop-screen/edit?title=Pop+screen&prefix=ps");
        await editor.PressAsync("open:0");
        editor.Type("f.title", "Bend").Type("f.code", "bend");
        editor
            .Type("f.characteristics[0].name", "angleDeg")
            .Type("f.characteristics[0].label", "Angle")
            .Type("f.characteristics[0].unit", "deg");
        editor.Type("f.characteristics[0].lower", "88,5").Type("f.characteristics[0].upper", "80");
        await editor.PressAsync("check");
        editor.Page.Expect(200);
        Assert.Contains("'angleDeg'", editor.Page.Words, StringComparison.Ordinal);
        Assert.Equal("88.5", editor.Value("f.characteristics[0].lower"));

        editor.Type("f.characteristics[0].upper", "91.5");
        await editor.PressAsync("add:1");
        editor.Type("f.title", "Cut").Type("f.code", "cut").Type("f.instructions", "Wear gloves.\r\nCut to length.");
        await editor.PressAsync("up:1");
        Assert.Contains("Nothing is wrong with it.", editor.Page.Words, StringComparison.Ordinal);
        Assert.True(
            editor.Text.IndexOf("code: cut", StringComparison.Ordinal) < editor.Text.IndexOf("code: bend", StringComparison.Ordinal)
        );
        var text = editor.Text;
        await editor.PressAsync("save");
        Assert.Equal("/setup/routes/M-90/pop-screen/1", editor.Page.Expect(200).Path);
        Assert.Contains("Wear gloves.", editor.Page.Words, StringComparison.Ordinal);

        var again = await RouteEditor.OpenAsync(w, Workshop.Lead, "/routes/M-90/pop-screen/edit?from=1");
        var file = (await (await DeskClient.SignInAsync(w, Workshop.Lead)).GetAsync("/setup/routes/M-90/pop-screen/1?handler=File")).Html;
        Assert.Equal(text, file);
        Assert.Equal(file.Replace("revision: 1", "revision: 2", StringComparison.Ordinal), again.Text);
    }

    [Fact]
    public async Task What_somebody_else_proposed_meanwhile_is_said_and_what_was_typed_is_kept()
    {
        await w.PostAsync("routes", RevisionApprovalTests.Yaml(RevisionApprovalTests.Text("edit-a", 1, "3")), Workshop.Lead);
        var editor = await RouteEditor.OpenAsync(w, Workshop.Lead, "/routes/TEST-1/edit-a/edit?from=1&stage=0");
        editor.Type("f.characteristics[0].upper", "7");
        (await w.PostAsync("routes", RevisionApprovalTests.Yaml(RevisionApprovalTests.Text("edit-a", 2, "4")), Workshop.Lead)).Expect(201);
        await editor.PressAsync("save");
        Assert.Contains("Meanwhile revision 2 was proposed by", editor.Page.Expect(409).Words, StringComparison.Ordinal);
        Assert.Equal("7", editor.Value("f.characteristics[0].upper"));
        await editor.PressAsync("renumber");
        await editor.PressAsync("save");
        Assert.Equal("/setup/routes/TEST-1/edit-a/3", editor.Page.Expect(200).Path);
        Assert.Contains("≤ 7", editor.Page.Words.Replace("at most 7", "≤ 7", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_text_with_mistakes_is_kept_with_every_mistake_at_its_line()
    {
        await w.PostAsync("routes", RevisionApprovalTests.Yaml(RevisionApprovalTests.Text("edit-b", 1, "3")), Workshop.Lead);
        var editor = await RouteEditor.OpenAsync(w, Workshop.Lead, "/routes/TEST-1/edit-b/edit?from=1");
        await editor.PressAsync("text");
        var broken = editor
            .Text.Replace("unit: count", "unit: counts", StringComparison.Ordinal)
            .Replace("method: entered-limits", "methode: entered-limits", StringComparison.Ordinal);
        editor.Type("text", broken);
        await editor.PressAsync("save");
        Assert.Equal(broken, editor.Text);
        Assert.Contains("has no key 'methode'", editor.Page.Words, StringComparison.Ordinal);
        Assert.Contains("There is no unit \"counts\"", editor.Page.Words, StringComparison.Ordinal);
        (await w.GetAsync("routes/revisions?model=TEST-1&kind=edit-b", Workshop.Lead)).Expect(200);
        Assert.Contains("▸", editor.Page.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_method_with_every_parameter_is_offered_and_listed()
    {
        var listed = (await w.GetAsync("methods?limit=500", Workshop.Builder)).Expect(200);
        Assert.Equal(StageMethods.Names, listed.Texts("items", "code"));
        var page = (await (await DeskClient.SignInAsync(w, Workshop.Quality)).GetAsync("/routes/methods")).Expect(200);
        var editor = await RouteEditor.OpenAsync(w, Workshop.Lead, "/routes/M-91/other/edit?title=Other&prefix=O");
        await editor.PressAsync("open:0");
        foreach (var method in StageMethods.Names.Select(StageMethods.Get))
        {
            editor.Type("f.method", method.Name);
            await editor.PressAsync("check");
            Assert.All(method.Parameters, p => Assert.Contains($"<code>{p.Name}</code>", page.Html, StringComparison.Ordinal));
            Assert.All(
                method.Parameters,
                p =>
                    Assert.Contains(
                        p.IsNumber ? $"f.parameters.numbers.{p.Name}\"" : $"f.parameters.{p.Name}",
                        editor.Page.Html,
                        StringComparison.Ordinal
                    )
            );
        }
    }

    [Fact]
    public async Task Who_is_not_the_lead_edits_nothing()
    {
        var quality = await DeskClient.SignInAsync(w, Workshop.Quality);
        (await quality.GetAsync("/routes/new")).Expect(403);
        (await quality.GetAsync(string.Create(CultureInfo.InvariantCulture, $"/routes/{Workshop.Model}/unit/edit"))).Expect(403);
    }
}
