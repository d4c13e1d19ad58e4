using CsCheck;
using Traceability.Domain.Codes;

namespace Traceability.Domain.Tests.Codes;

public class CodeLikenessTests
{
    private static readonly string[] Letters = ["US", "U", "D", "CAP"];

    private static readonly Gen<string> AnyCode = Gen.Select(
        Gen.Int[0, 3].Select(i => Letters[i]),
        Gen.Int[0, 99],
        Gen.Int[0, 99_999],
        (letters, year, number) => $"{letters}{year:00}-{number:00000}"
    );

    [Theory]
    [InlineData("us0015")]
    [InlineData("US 15")]
    [InlineData("US-O015")]
    [InlineData("U5-0015")]
    [InlineData("us - 00015")]
    [InlineData("us.ool5")]
    [InlineData("uS_15")]
    public void The_same_serial_written_otherwise_is_the_same(string typed)
    {
        Assert.Equal(0, CodeLikeness.Apart(typed, "US-0015"));
        Assert.Equal(CodeLikeness.Key("US-0015"), CodeLikeness.Key(typed));
    }

    [Theory]
    [InlineData("UX-0015", 1)]
    [InlineData("SU-0015", 1)]
    [InlineData("US-0051", 1)]
    [InlineData("US-015", 0)]
    [InlineData("US-00156", 1)]
    [InlineData("US-0016", 1)]
    [InlineData("XX-0015", 2)]
    [InlineData("US-0115", 1)]
    [InlineData("US-2215", 2)]
    public void Mistakes_are_counted_up_to_one(string typed, int apart) => Assert.Equal(apart, CodeLikeness.Apart(typed, "US-0015"));

    [Fact]
    public void A_code_with_one_mistake_is_always_among_those_looked_for() =>
        Gen.Select(AnyCode, Gen.Int[0, 40], Gen.Int[0, 3], Gen.Int[0, 35])
            .Sample(
                (code, where, kind, typedInstead) =>
                {
                    var c = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"[typedInstead];
                    var at = where % code.Length;
                    var typed = kind switch
                    {
                        0 => code[..at] + c + code[(at + 1)..],
                        1 => code[..at] + code[(at + 1)..],
                        2 => code[..at] + c + code[at..],
                        _ => at + 1 < code.Length ? code[..at] + code[at + 1] + code[at] + code[(at + 2)..] : code,
                    };
                    Assert.True(
                        CodeLikeness.Apart(typed, code) <= 1
                            || code[at] == '-'
                            || (kind == 3 && at + 1 < code.Length && code[at + 1] == '-'),
                        $"{typed} {code}"
                    );
                    Assert.Contains(CodeLikeness.Key(code), CodeLikeness.KeysOneMistakeAway(typed));
                }
            );

    [Fact]
    public void Case_blanks_and_hyphens_never_count() =>
        AnyCode.Sample(code =>
            Assert.Equal(
                (0, 0),
                (
                    CodeLikeness.Apart(code.ToLowerInvariant().Replace('-', ' '), code),
                    CodeLikeness.Apart(code.Replace("-", "", StringComparison.Ordinal), code)
                )
            )
        );
}
