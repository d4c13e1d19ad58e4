using CsCheck;
using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;

namespace Traceability.Domain.Tests.Scanning;

public class ScanParserTests
{
    public static TheoryData<CodeKind, Scan> PrintedKinds =>
        new()
        {
            { CodeKind.Badge, new Scan.Badge("X-1") },
            { CodeKind.Station, new Scan.Station("X-1") },
            { CodeKind.Part, new Scan.Part("X-1") },
            { CodeKind.Carrier, new Scan.Carrier("X-1") },
            { CodeKind.Lot, new Scan.Lot("X-1") },
            { CodeKind.Instrument, new Scan.Instrument("X-1") },
            { CodeKind.Position, new Scan.Position("X-1") },
        };

    [Theory]
    [MemberData(nameof(PrintedKinds), DisableDiscoveryEnumeration = true)]
    public void Every_printed_kind_is_told_apart(CodeKind kind, Scan expected) =>
        Assert.Equal(expected, ScanParser.Parse(PrintedCode.For(kind, "x-1").Text.ToLowerInvariant() + "\r"));

    [Fact]
    public void Every_action_is_read_from_its_code_and_from_its_word_in_either_case() =>
        Assert.All(
            StationActions.All,
            action =>
            {
                Assert.Equal(new Scan.Action(action), ScanParser.Parse(PrintedCode.For(CodeKind.Action, action.Word()).Text));
                Assert.Equal(new Scan.Action(action), ScanParser.Parse(action.Word().ToLowerInvariant()));
            }
        );

    [Fact]
    public void A_printed_action_that_this_sheet_does_not_know_is_bare_text() =>
        Assert.IsType<Scan.Bare>(ScanParser.Parse(PrintedCode.For(CodeKind.Action, "JUMP").Text));

    [Fact]
    public void A_wrong_check_character_is_told_with_the_right_one()
    {
        var good = PrintedCode.For(CodeKind.Part, "D26-00017");
        var wrong = good.Check == '0' ? '1' : '0';

        Assert.Equal(new Scan.WrongCheck(CodeKind.Part, "D26-00017", wrong, good.Check), ScanParser.Parse($"PT-D26-00017-{wrong}"));
    }

    [Theory]
    [InlineData("912", "912")]
    [InlineData(" 12,50\t", "12.50")]
    [InlineData("-0.3", "-0.3")]
    [InlineData("0012", "12")]
    public void A_plain_number_is_a_number_and_keeps_how_it_was_typed(string typed, string digits)
    {
        var number = Assert.IsType<Scan.Number>(ScanParser.Parse(typed));

        Assert.Equal(digits, number.Value.Digits);
        Assert.Equal(typed.Trim(), number.Typed);
    }

    [Theory]
    [InlineData("1,234")]
    [InlineData("1 234")]
    [InlineData("1.2.3")]
    [InlineData("1e99")]
    [InlineData("nan")]
    [InlineData("-Infinity")]
    [InlineData("12345678901234567890")]
    [InlineData("12.5 mV")]
    [InlineData("12.5mV/Pa")]
    [InlineData("80 GΩ")]
    [InlineData("20,5 degC")]
    public void What_is_meant_as_a_number_is_told_apart_with_advice(string typed) =>
        Assert.NotEmpty(Assert.IsType<Scan.BadNumber>(ScanParser.Parse(typed)).Problem);

    [Theory]
    [InlineData("D26-00017")]
    [InlineData("5A")]
    [InlineData("26-00017")]
    [InlineData("screw thread torn")]
    [InlineData("2 screws lost")]
    [InlineData("http://example.org/x")]
    [InlineData("-")]
    public void Everything_else_is_bare_text(string typed) => Assert.Equal(new Scan.Bare(typed), ScanParser.Parse(typed));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData(" \r\n\t\u0000")]
    public void Blanks_and_control_characters_alone_are_nothing(string? typed) => Assert.IsType<Scan.Nothing>(ScanParser.Parse(typed));

    [Fact]
    public void A_number_does_not_print_itself_because_it_may_be_a_pin()
    {
        Assert.DoesNotContain("4711", ScanParser.Parse("4711").ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("4711", ScanParser.Parse("4711 4711").ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("4711", new StationCommand.Identify("B", new Pin("4711")).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void No_text_whatever_makes_it_throw_and_none_is_taken_whole_beyond_the_limit() =>
        Gen.String[Gen.Char, 0, 700]
            .Sample(text => ScanParser.Parse(text) is not Scan.Bare bare || bare.Text.Length <= ScanParser.MaxLength);
}
