using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Traceability.Domain.Stages;

namespace Traceability.Web.Tests.Pages;

/// <summary>A text that is missing from its resource file would show its key to people.</summary>
public sealed partial class TextsTests
{
    private static readonly string Features = Path.Combine(Folder(), "../../../src/Traceability.Web/Features");

    [Fact]
    public void Every_text_that_pages_and_their_code_name_is_there()
    {
        var known = Directory
            .EnumerateFiles(Features, "*.resx", SearchOption.AllDirectories)
            .SelectMany(f => XDocument.Load(f).Root!.Elements("data").Select(d => d.Attribute("name")!.Value))
            .ToHashSet();
        var named = Directory
            .EnumerateFiles(Features, "*", SearchOption.AllDirectories)
            .Where(f => f.EndsWith(".cshtml", StringComparison.Ordinal) || f.EndsWith(".cs", StringComparison.Ordinal))
            .SelectMany(f => Key().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value))
            .ToHashSet();
        Assert.True(named.Count > 50);
        Assert.Empty(named.Except(known).Order());
    }

    [Fact]
    public void What_judges_a_stage_is_said_in_words_of_the_trade()
    {
        var words = XDocument
            .Load(Path.Combine(Features, "Shared/DeskTexts.resx"))
            .Root!.Elements("data")
            .Select(d => d.Attribute("name")!.Value)
            .Where(n => n.StartsWith("Method.", StringComparison.Ordinal));

        Assert.Equal(StageMethods.Names.Select(n => "Method." + n).Order(StringComparer.Ordinal), words.Order(StringComparer.Ordinal));
    }

    [GeneratedRegex("""(?:\bD|\bT|\bS|\bA|texts|shared)\[(?:[^"\]]*\? )?"([A-Z][A-Za-z0-9.-]+)"[,\]]""")]
    private static partial Regex Key();

    private static string Folder([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
