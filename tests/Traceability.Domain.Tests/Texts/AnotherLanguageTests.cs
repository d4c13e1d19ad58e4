using System.Globalization;
using Traceability.Domain.Codes;
using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Scanning;
using Traceability.Domain.Tests.Gates.Vocabulary;

namespace Traceability.Domain.Tests.Texts;

public class AnotherLanguageTests
{
    private static GateCheck Scrapped()
    {
        var part = new APart(ARoute.Of(ARoute.Stage("cut")));
        part.TryRaise().Accepted();
        part.TryDecide(DispositionKind.Scrap).Accepted();
        return part.Rule("cut", PartUsable.Rule);
    }

    private static Prompt Said(string line) => StationDesk.Take(StationSession.Empty, ScanParser.Parse(line), null).Prompt;

    [Fact]
    public void The_reason_and_the_remedy_of_a_gate_are_said_in_the_language_of_who_asks()
    {
        var english = Scrapped();
        var other = AnotherLanguage.Speaking(Scrapped);

        Assert.Equal($"«{english.Because}»", other.Because);
        Assert.Equal("«nothing: take another part»", other.Remedy);
    }

    [Fact]
    public void The_station_prompts_in_the_language_of_who_scans()
    {
        var other = AnotherLanguage.Speaking(() => Said(PrintedCode.For(CodeKind.Badge, "BUILD1").Text));

        Assert.Equal("«Type your PIN.»", other.Line);
        Assert.Equal("«Badge BUILD1»", other.Detail);
    }

    [Fact]
    public void What_decides_does_not_depend_on_the_language()
    {
        var english = Scrapped();
        var other = AnotherLanguage.Speaking(Scrapped);

        Assert.Equal(english with { Because = "", Remedy = "" }, other with { Because = "", Remedy = "" });
    }

    [Fact]
    public void A_language_without_words_is_answered_in_English() =>
        Assert.Equal(
            "Type your PIN.",
            AnotherLanguage.Speaking(CultureInfo.GetCultureInfo("de"), () => Said(PrintedCode.For(CodeKind.Badge, "BUILD1").Text).Line)
        );
}
