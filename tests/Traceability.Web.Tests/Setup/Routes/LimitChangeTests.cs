using Traceability.Web.Tests.Pages;
using static Traceability.Web.Tests.Setup.RevisionApprovalTests;

namespace Traceability.Web.Tests.Setup.Routes;

/// <summary>One limit and a reason make the next revision; before, the limit can be tried on what was made.</summary>
public sealed class LimitChangeTests(Workshop w) : IClassFixture<Workshop>
{
    private static string Path(string kind) => $"/routes/TEST-1/{kind}/limit?stage=look&characteristic=faults";

    [Fact]
    public async Task A_limit_and_a_reason_are_the_next_revision_which_differs_in_nothing_else()
    {
        await w.RouteAsync(Text("limit-a", 1, "3"));
        var lead = await DeskClient.SignInAsync(w, Workshop.Lead);
        var done = (
            await lead.SendAsync(Path("limit-a"), "limit", ("upper", "5"), ("reason", "ten parts tried"), ("act", "propose"))
        ).Expect(200);
        Assert.Equal("/setup/routes/TEST-1/limit-a/2", done.Path);
        Assert.Contains("ten parts tried", done.Words, StringComparison.Ordinal);
        var compared = (await w.GetAsync("routes/TEST-1/limit-a/comparison?left=1&right=2", Workshop.Lead)).Expect(200);
        var line = Assert.Single(Assert.Single(compared.GetProperty("stages").EnumerateArray()).GetProperty("lines").EnumerateArray());
        Assert.Equal(("upper", "3", "5"), (line.Text("field"), line.Text("left"), line.Text("right")));
    }

    [Theory]
    [InlineData("upper", "many", "must be a number")]
    [InlineData("lower", "9", "faults")]
    [InlineData("reason", " ", "Say why the limit is changed")]
    public async Task What_cannot_be_a_limit_is_said_at_its_field_and_what_was_typed_is_kept(string field, string value, string words)
    {
        var kind = "limit-b-" + field;
        await w.RouteAsync(Text(kind, 1, "3"));
        var lead = await DeskClient.SignInAsync(w, Workshop.Lead);
        (string, string)[] typed = [("upper", "5"), ("reason", "ten parts tried"), ("act", "propose"), (field, value)];
        var refused = (await lead.SendAsync(Path(kind), "limit", typed)).Expect(400);
        Assert.Contains(words, refused.Words, StringComparison.Ordinal);
        Assert.Contains($"id=\"limit-{field}-problem\"", refused.Html, StringComparison.Ordinal);
        if (value != " ")
        {
            Assert.Contains($"value=\"{value}\"", refused.Html, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Tried_on_the_last_parts_it_names_those_that_would_have_come_out_otherwise_and_records_nothing()
    {
        await w.RouteAsync(Text("limit-c", 1, "3"));
        string[] serials = ["", ""];
        foreach (var (faults, i) in new[] { (1, 0), (3, 1) })
        {
            serials[i] = (await w.PostAsync("parts", new { kind = "limit-c", model = Workshop.Model })).Expect(201).Text("serial");
            await w.RecordAsync(serials[i], "look", new { readings = new[] { new { characteristic = "faults", value = faults } } });
        }

        var lead = await DeskClient.SignInAsync(w, Workshop.Lead);
        var tried = (await lead.SendAsync(Path("limit-c"), "limit", ("upper", "2"), ("act", "try"))).Expect(200);
        Assert.Contains("Every value met its limits in 2 of 2 attempts; under these it would in 1.", tried.Words, StringComparison.Ordinal);
        Assert.Contains($"/parts/{serials[1]}\"", tried.Html, StringComparison.Ordinal);
        Assert.DoesNotContain($"/parts/{serials[0]}\"", tried.Html, StringComparison.Ordinal);
        (await lead.GetAsync("/setup/routes/TEST-1/limit-c/2")).Expect(404);

        var editor = await RouteEditor.OpenAsync(w, Workshop.Lead, "/routes/TEST-1/limit-c/edit?stage=0");
        editor.Type("f.characteristics[0].upper", "2");
        await editor.PressAsync("dry");
        Assert.Contains("under these it would in 1.", editor.Page.Expect(200).Words, StringComparison.Ordinal);
    }
}
