using System.Text.RegularExpressions;
using Traceability.Domain.Tests.Architecture;

namespace Traceability.Domain.Tests.Texts;

/// <summary>What people read stands in resource files, so that a second language is a file and no search through the code.</summary>
public partial class NoSentenceInCodeTests
{
    // By this mark the holds of a trace are found again in what is stored: it is a name and is not translated.
    private static readonly string[] Marks = [" (trace of  )"];

    private static IEnumerable<string> SentencesIn(string code) =>
        SourceLiterals
            .Of(code)
            .Where(l =>
                !l.Statement.Contains("throw ", StringComparison.Ordinal)
                && !l.Statement.Contains("GeneratedRegex", StringComparison.Ordinal)
            )
            .Select(l => l.Text)
            .Where(text => TwoWords().IsMatch(text) && !Marks.Contains(text));

    [Theory]
    [InlineData("Codes")]
    [InlineData("Evidence")]
    [InlineData("Gates")]
    [InlineData("Routes")]
    [InlineData("Scanning")]
    [InlineData("Work")]
    public void Nothing_is_said_that_is_not_in_a_file(string folder) =>
        Assert.Empty(TheRepository.Sources("src", "Traceability.Domain", folder).SelectMany(f => SentencesIn(f.Text)));

    [Theory]
    [InlineData("""var a = $"{part} was scrapped";""", " was scrapped")]
    [InlineData("""var a = $"{string.Join(", ", b.Select(c => $"lot {c} expired"))}";""", "lot  expired")]
    [InlineData("""var a = open ? "the gate is open" : "shut";""", "the gate is open")]
    [InlineData("""var a = '"'; var b = "say \"why\" it is so";""", "say \"why\" it is so")]
    public void A_sentence_in_code_is_found_out(string code, string sentence) => Assert.Equal([sentence], SentencesIn(code));

    [Theory]
    [InlineData("// a remark that says \"something in words\"")]
    [InlineData("""throw new ArgumentException("for programmers only");""")]
    [InlineData("""var a = $"{part.Serial}: {stage.Title}";""")]
    [InlineData("""var a = Refusal.Invalid("returnTo", GateTexts.NextIs(stage));""")]
    public void Names_remarks_and_what_only_programmers_read_are_none(string code) => Assert.Empty(SentencesIn(code));

    [GeneratedRegex("[A-Za-z]{2,}['\",;:]* +['\"(]*[A-Za-z]{2,}")]
    private static partial Regex TwoWords();
}
