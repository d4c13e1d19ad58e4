using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Traceability.Domain.Work;
using Traceability.Web.Http;

namespace Traceability.Web.Tests.Http;

/// <summary>
/// The list of problems is whole: what the domain refuses is in it, everything in it has words, and nothing answers a problem past it.
/// </summary>
public sealed partial class ProblemKindTests
{
    private static readonly string Web = Path.Combine(Folder(), "../../../src/Traceability.Web");

    [Fact]
    public void Every_refusal_of_the_domain_is_in_the_list()
    {
        var codes = typeof(RefusalCode)
            .GetFields(BindingFlags.Public | BindingFlags.Static)
            .Select(f => (string)f.GetValue(null)!)
            .ToList();
        Assert.True(codes.Count > 20);
        Assert.DoesNotContain(codes, c => ProblemKinds.Find(c) is null);
    }

    [Fact]
    public void Every_kind_has_a_name_a_meaning_and_a_remedy_and_there_are_no_words_without_a_kind()
    {
        var words = XDocument
            .Load(Path.Combine(Web, "Http/ProblemTexts.resx"))
            .Root!.Elements("data")
            .Select(d => d.Attribute("name")!.Value);
        var wanted = ProblemKinds.All.SelectMany(k => new[] { "Title", "Means", "Do" }.Select(w => $"{k.Code}.{w}"));
        Assert.Equal(wanted.Order(StringComparer.Ordinal), words.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_code_is_small_letters_with_hyphens_and_stands_once() =>
        Assert.All(ProblemKinds.All.GroupBy(k => k.Code), same => Assert.Matches("^[a-z]+(-[a-z]+)*$", Assert.Single(same).Code));

    [Fact]
    public void Nothing_answers_a_problem_that_is_not_in_the_list() =>
        Assert.Empty(
            Directory
                .EnumerateFiles(Web, "*.cs", SearchOption.AllDirectories)
                .Where(f => PastTheList().IsMatch(File.ReadAllText(f)))
                .Select(Path.GetFileName)
        );

    // With nothing in the brackets only the status is said, and the document of that status is put in.
    [GeneratedRegex(
        @"Results\.(Problem|ValidationProblem|NotFound|BadRequest|Conflict|Unauthorized|Forbid|StatusCode)\((?!\))|new ProblemDetails"
    )]
    private static partial Regex PastTheList();

    private static string Folder([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
