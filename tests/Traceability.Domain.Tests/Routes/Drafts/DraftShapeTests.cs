using System.Text.RegularExpressions;
using Traceability.Domain.Routes.Drafts;
using Traceability.Domain.Tests.Architecture;

namespace Traceability.Domain.Tests.Routes.Drafts;

public class DraftShapeTests
{
    [Fact]
    public void Every_key_that_a_route_file_may_have_can_be_edited_and_no_other()
    {
        var read = TheRepository
            .Sources("src", "Traceability.Domain", "Routes", "Files")
            .Where(f =>
                !f.Text.Contains("class YamlMap", StringComparison.Ordinal)
                && !f.Text.Contains("record NamedKind", StringComparison.Ordinal)
            )
            .SelectMany(f =>
                Regex
                    .Matches(f.Text, """\.(?:(?:Optional)?(?:Text|Whole|Number|Map)|Flag|Date|Texts|Maps|Distinct)\(\s*"([a-zA-Z]+)\x22""")
                    .Select(m => m.Groups[1].Value)
            )
            .Append("afterStage")
            .ToHashSet();
        Assert.True(read.Count > 50);
        Assert.Equal(read.Order(StringComparer.Ordinal), Keys(DraftShape.Route).Distinct().Order(StringComparer.Ordinal));
    }

    private static IEnumerable<string> Keys(DraftField field) => field.Fields.SelectMany(f => Keys(f).Prepend(f.Key));
}
