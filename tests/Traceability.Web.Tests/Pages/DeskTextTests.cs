using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Traceability.Web.Tests.Pages;

public sealed partial class DeskTextTests
{
    private static readonly string Features = Path.Combine(SourceFolder(), "src", "Traceability.Web", "Features");

    [Fact]
    public void Every_text_that_a_page_of_the_desk_asks_for_is_in_the_resource_file()
    {
        var known = XDocument
            .Load(Path.Combine(Features, "Shared", "DeskTexts.resx"))
            .Descendants("data")
            .Select(d => d.Attribute("name")!.Value)
            .ToHashSet();
        var asked = Directory
            .EnumerateFiles(Features, "*.cshtml", SearchOption.AllDirectories)
            .SelectMany(f => Keys().Matches(File.ReadAllText(f)).Select(m => m.Groups["key"].Value))
            .ToHashSet();
        Assert.True(asked.Count > 100, $"only {asked.Count} texts were found");
        Assert.DoesNotContain(
            asked,
            key => key.EndsWith('.') ? !known.Any(k => k.StartsWith(key, StringComparison.Ordinal)) : !known.Contains(key)
        );
    }

    private static string SourceFolder([System.Runtime.CompilerServices.CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", ".."));

    [GeneratedRegex("(?<![A-Za-z])D\\[\"(?<key>[^\"]+)\"")]
    private static partial Regex Keys();
}
