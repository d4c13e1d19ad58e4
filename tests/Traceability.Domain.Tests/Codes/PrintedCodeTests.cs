using CsCheck;
using Traceability.Domain.Codes;

namespace Traceability.Domain.Tests.Codes;

public class PrintedCodeTests
{
    private static readonly Gen<string> Ids = Gen.Select(
        Gen.Char["ABCXYZ0189"],
        Gen.String[Gen.Char["ABCDXYZ0123456789-._"], 0, 20],
        Gen.Char["ABCXYZ0189"],
        (first, middle, last) => first + middle + last
    );

    private static readonly Gen<CodeKind> Kinds = Gen.Int[0, CodeKinds.All.Count - 1].Select(i => CodeKinds.All[i]);

    [Fact]
    public void Kind_id_and_check_character_are_parted_by_hyphens()
    {
        Assert.Equal("PT-D26-00017-" + CheckCharacter.For("PTD2600017"), PrintedCode.For(CodeKind.Part, "d26-00017").Text);
        Assert.Equal(["BD", "WS", "PT", "CR", "LT", "IT", "AC", "PS"], CodeKinds.All.Select(kind => kind.Letters()));
    }

    [Fact]
    public void What_was_printed_is_read_in_either_case_and_with_blanks_around() =>
        Gen.Select(Kinds, Ids)
            .Sample(
                (kind, id) =>
                {
                    var code = PrintedCode.For(kind, id);
                    return PrintedCode.Read(code.Text) == new CodeReading.Good(code)
                        && PrintedCode.Read(" " + code.Text.ToLowerInvariant() + "\r\n") == new CodeReading.Good(code)
                        && code.Id == id;
                }
            );

    [Fact]
    public void A_wrong_character_anywhere_is_never_read_as_good() =>
        Gen.Select(Kinds, Ids, Gen.Int[0, 60], Gen.Char["0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"])
            .Sample(
                (kind, id, place, other) =>
                {
                    var text = PrintedCode.For(kind, id).Text;
                    var at = place % text.Length;
                    if (!char.IsAsciiLetterOrDigit(text[at]) || text[at] == other)
                        return true;
                    return PrintedCode.Read(text[..at] + other + text[(at + 1)..]) is not CodeReading.Good;
                }
            );

    [Fact]
    public void A_wrong_check_character_says_which_was_expected()
    {
        var good = PrintedCode.For(CodeKind.Lot, "F-7");
        var wrong = good.Check == 'A' ? 'B' : 'A';

        Assert.Equal(new CodeReading.WrongCheck(CodeKind.Lot, "F-7", wrong, good.Check), PrintedCode.Read($"LT-F-7-{wrong}"));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("12.50")]
    [InlineData("D26-00017")]
    [InlineData("PT-A")]
    [InlineData("PT--A")]
    [InlineData("XX-D26-A")]
    [InlineData("PT_D26-A")]
    [InlineData("PT-D26-AB")]
    [InlineData("PT-D26-")]
    [InlineData("PT-D 26-A")]
    [InlineData("PT-ä-A")]
    [InlineData("PT-.D-A")]
    public void Anything_else_is_not_a_printed_code(string? text) => Assert.IsType<CodeReading.NotPrinted>(PrintedCode.Read(text));

    [Fact]
    public void An_id_that_cannot_be_printed_is_refused() => Assert.Throws<ArgumentException>(() => PrintedCode.For(CodeKind.Lot, "a/b"));
}
