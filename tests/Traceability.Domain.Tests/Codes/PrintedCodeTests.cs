using CsCheck;
using Traceability.Domain.Codes;

namespace Traceability.Domain.Tests.Codes;

public class PrintedCodeTests
{
    private static readonly Gen<string> Ids = Gen.Select(
        Gen.Char["ABCXYZ0189"], Gen.String[Gen.Char["ABCDXYZ0123456789-._"], 0, 20], Gen.Char["ABCXYZ0189"], (first, middle, last) => first + middle + last);

    private static readonly Gen<CodeKind> Kinds = Gen.Int[0, CodeKinds.All.Count - 1].Select(i => CodeKinds.All[i]);

    [Fact]
    public void Kind_id_and_check_character_are_parted_by_hyphens()
    {
        Assert.Equal("PT-D26-00017-" + CheckCharacter.For("PTD2600017"), PrintedCode.For(CodeKind.Part, "d26-00017").Text);
        Assert.Equal(["BD", "WS", "PT", "CR", "LT", "IT", "AC", "PS"], CodeKinds.All.Select(kind => kind.Letters()));
    }

    [Fact]
    public void What_was_printed_is_read_in_either_case_and_with_blanks_around() => Gen.Select(Kinds, Ids).Sample((kind, id) =>
    {
        var code = PrintedCode.For(kind, id);
        return PrintedCode.Read(code.Text) == new CodeReading.Good(code)
            && PrintedCode.Read(" " + code.Text.ToLowerInvariant() + "\r\n") == new CodeReading.Good(code)
            && code.Id == id;
    });

    [Fact]
    public void A_wrong_character_anywhere_is_never_read_as_good() => Gen.Select(Kinds, Ids, Gen.Int[0, 60], Gen.Char["0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"])
        .Sample((kind, id, place, other) =>
        {
            var text = PrintedCode.For(kind, id).Text;
            var at = place % text.Length;
            if (!char.IsAsciiLetterOrDigit(text[at]) || text[at] == other) return true;
            return PrintedCode.Read(text[..at] + other + text[(at + 1)..]) is not CodeReading.Good;
        });

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

public class CodeTextTests
{
    [Theory]
    [InlineData("D26-00017", "D26-00017")]
    [InlineData("  jig.7_b ", "JIG.7_B")]
    [InlineData("7", "7")]
    [InlineData("1234567890123456789012345678901234567890", "1234567890123456789012345678901234567890")]
    public void A_good_text_is_kept_in_capitals(string text, string expected)
    {
        Assert.True(CodeText.TryRead(text, "A serial", out var code, out _));
        Assert.Equal(expected, code);
    }

    [Theory]
    [InlineData(null, "A serial must not be empty.")]
    [InlineData("  ", "A serial must not be empty.")]
    [InlineData("12345678901234567890123456789012345678901", "A serial may have 40 characters; this has 41.")]
    [InlineData("L/7", "A serial may have the letters A-Z, digits, \"-\", \".\" and \"_\"; this has \"/\".")]
    [InlineData("L 7", "A serial may have the letters A-Z, digits, \"-\", \".\" and \"_\"; this has a blank.")]
    [InlineData("Lä7", "A serial may have the letters A-Z, digits, \"-\", \".\" and \"_\"; this has \"Ä\".")]
    [InlineData("L\u00007", "A serial may have the letters A-Z, digits, \"-\", \".\" and \"_\"; this has U+0000.")]
    [InlineData("-L7", "A serial must begin and end with a letter or digit.")]
    [InlineData("L7.", "A serial must begin and end with a letter or digit.")]
    [InlineData("..", "A serial must begin and end with a letter or digit.")]
    public void A_bad_text_is_refused_with_what_is_allowed(string? text, string expected)
    {
        Assert.False(CodeText.TryRead(text, "A serial", out var code, out var problem));
        Assert.Null(code);
        Assert.Equal(expected, problem);
    }
}

public class SerialNumbersTests
{
    [Fact]
    public void A_serial_is_kind_year_and_running_number()
    {
        Assert.Equal("D26-00017", SerialNumbers.Propose("D", 2026, 17));
        Assert.Equal("CAP09-99999", SerialNumbers.Propose("cap", 2009, 99_999));
    }

    [Fact]
    public void The_order_of_the_text_is_the_order_of_time() =>
        Gen.Select(Gen.Int[2000, 2099], Gen.Int[1, 99_999], Gen.Int[2000, 2099], Gen.Int[1, 99_999]).Sample((year, count, otherYear, otherCount) =>
            Math.Sign(string.CompareOrdinal(SerialNumbers.Propose("D", year, count), SerialNumbers.Propose("D", otherYear, otherCount)))
            == Math.Sign((year, count).CompareTo((otherYear, otherCount))));

    [Fact]
    public void A_proposed_serial_may_be_printed() =>
        Assert.IsType<CodeReading.Good>(PrintedCode.Read(PrintedCode.For(CodeKind.Part, SerialNumbers.Propose("D", 2026, 1)).Text));

    [Theory]
    [InlineData("", 2026, 1)]
    [InlineData("ABCD", 2026, 1)]
    [InlineData("D1", 2026, 1)]
    [InlineData("D", 1999, 1)]
    [InlineData("D", 2100, 1)]
    [InlineData("D", 2026, 0)]
    [InlineData("D", 2026, 100_000)]
    public void What_would_break_the_order_is_refused(string letters, int year, int count) =>
        Assert.ThrowsAny<ArgumentException>(() => SerialNumbers.Propose(letters, year, count));
}
