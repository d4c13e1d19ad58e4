using Traceability.Domain.Routes.Drafts;
using Traceability.Domain.Routes.Files;
using Traceability.Domain.Stages;

namespace Traceability.Domain.Tests.Routes.Drafts;

/// <summary>A route taken apart, edited by fields and written again.</summary>
public class DraftTests
{
    public static TheoryData<string> Files => [.. DemoRoutes.FileNames];

    [Theory]
    [MemberData(nameof(Files))]
    public void A_route_written_by_fields_and_read_as_a_file_and_back_is_the_same_revision(string file)
    {
        var written = DraftWriter.Write(DraftReader.Read(DemoRoutes.Read(file).Route!.Text)!);
        var again = DraftWriter.Write(DraftReader.Read(written)!);
        Assert.Equal(RouteText.ReadKept(written).Route!.Hash, RouteText.ReadKept(again).Route!.Hash);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Written_by_fields_a_route_says_what_its_file_said(string file)
    {
        var route = DemoRoutes.Read(file).Route!;
        var written = RouteText.Read(DraftWriter.Write(DraftReader.Read(route.Text)!), StageMethods.Requirements);
        Assert.Empty(written.Problems);
        Assert.False(Domain.Routes.Comparison.RouteComparison.Of(route, written.Route!).Differs);
        Assert.Equal(route.Author, written.Route!.Author);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Typed_into_a_form_a_stage_is_the_stage_that_it_was(string file)
    {
        var draft = DraftReader.Read(DemoRoutes.Read(file).Route!.Text)!;
        var text = DraftWriter.Write(draft);
        foreach (var (stage, i) in draft.Items("stages").ToList().Select((s, i) => (s, i)))
        {
            var typed = DraftForm.Read(DraftShape.Stages, Typing.Of(DraftShape.Stages, stage));
            typed.Comments = stage.Comments;
            draft.Items("stages")[i] = typed;
        }

        Assert.Equal(text, DraftWriter.Write(draft));
    }

    [Theory]
    [InlineData("Soak, warm: \"dry\" #2")]
    [InlineData("- first")]
    [InlineData("first\nsecond\\third")]
    [InlineData("{not: a map}")]
    [InlineData("Überzug µm ≥ 5 % ½")]
    [InlineData("trailing colon:")]
    [InlineData("'quoted'")]
    [InlineData("&anchor *alias !tag")]
    public void Whatever_is_typed_is_read_again_as_it_was_typed(string typed)
    {
        var draft = DraftReader.Read(DemoRoutes.Read("any-film-lot.yaml").Route!.Text)!;
        draft["title"] = typed;
        draft.Items("stages")[1].Items("characteristics")[0]["label"] = typed;
        var route = RouteText.ReadKept(DraftWriter.Write(draft)).Route!;
        Assert.Equal((typed, typed), (route.Title, route.Stages[1].Characteristics[0].Label));
    }

    [Fact]
    public void A_comment_before_a_stage_stays_before_it()
    {
        var written = DraftWriter.Write(DraftReader.Read(DemoRoutes.Read("tarn-1-capsule.yaml").Route!.Text)!);
        Assert.Contains(
            "  # Straight after the humid soak, while a dirty surface still leaks.",
            written.Split("  - code: insulation")[0][^500..],
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_file_with_a_key_that_a_route_has_not_is_mended_as_a_text_first() =>
        Assert.Null(DraftReader.Read(ARouteFile.Good.Replace("loads: true", "load: true", StringComparison.Ordinal)));

    [Theory]
    [InlineData("upper", "880", "lower", "920", "stages[1].characteristics[0]")]
    [InlineData("upper", "many", "lower", "1", "stages[1].characteristics[0].upper")]
    [InlineData("unit", "parsec", "lower", "1", "stages[1].characteristics[0].unit")]
    public void What_is_wrong_is_said_at_its_field(string key, string value, string other, string otherValue, string path)
    {
        var draft = DraftReader.Read(DemoRoutes.Read("any-film-lot.yaml").Route!.Text)!;
        var characteristic = draft.Items("stages")[1].Items("characteristics")[0];
        (characteristic["nominal"], characteristic[key], characteristic[other]) = ("", value, otherValue);
        var reading = RouteText.Read(DraftWriter.Write(draft), StageMethods.Requirements);
        Assert.Equal(path, Assert.Single(reading.Problems).Path);
    }

    [Fact]
    public void A_wait_for_a_stage_that_comes_later_is_said_at_its_field_so_that_no_circle_can_be_made()
    {
        var draft = DraftReader.Read(DemoRoutes.Read("tarn-1-capsule.yaml").Route!.Text)!;
        var stages = draft.Items("stages");
        var acoustic = stages[^1];
        stages.RemoveAt(stages.Count - 1);
        stages.Insert(0, acoustic);
        var problems = RouteText.Read(DraftWriter.Write(draft), StageMethods.Requirements).Problems;
        Assert.Contains(problems, p => p.Path == "stages[0].waits[0].afterStage");
    }

    [Fact]
    public void A_number_typed_with_a_decimal_comma_is_that_number() =>
        Assert.Equal(
            "0.5",
            DraftForm.Read(DraftShape.Characteristics, new Dictionary<string, string> { ["name"] = "gapUm", ["lower"] = "0,5" })["lower"]
        );
}
