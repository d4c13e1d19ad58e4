using CsCheck;
using Traceability.Domain.Codes;

namespace Traceability.Domain.Tests.Codes;

public class CheckCharacterTests
{
    private const string Alphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    private static readonly Gen<string> Texts = Gen.String[Gen.Char[Alphabet], 1, 24];

    private static bool Holds(string withCheck) => CheckCharacter.For(withCheck.AsSpan(0, withCheck.Length - 1)) == withCheck[^1];

    // Source: ISO/IEC 7064 MOD 37,36 as used by the GRid, worked example (from memory).
    [Fact]
    public void The_worked_example_is_met() => Assert.Equal('M', CheckCharacter.For("A12425GABC1234002"));

    [Theory]
    [InlineData("a12425gabc1234002")]
    [InlineData("A1-2425G-ABC1234002")]
    [InlineData(" A1.2425G_ABC/1234002 ")]
    public void Case_and_marks_between_make_no_difference(string text) => Assert.Equal('M', CheckCharacter.For(text));

    [Fact]
    public void There_must_be_something_to_check() => Assert.Throws<ArgumentException>(() => CheckCharacter.For("-./ä"));

    [Fact]
    public void Every_single_wrong_character_is_noticed() =>
        Texts.Sample(text =>
        {
            var good = text + CheckCharacter.For(text);
            for (var at = 0; at < good.Length; at++)
                foreach (var other in Alphabet)
                    if (Holds(good[..at] + other + good[(at + 1)..]) != (other == good[at]))
                        return false;
            return true;
        });

    [Fact]
    public void Every_swap_of_neighbours_that_do_not_follow_each_other_in_the_alphabet_is_noticed() =>
        Texts.Sample(text =>
        {
            var good = text + CheckCharacter.For(text);
            for (var at = 0; at + 1 < good.Length; at++)
            {
                var step =
                    (Alphabet.IndexOf(good[at], StringComparison.Ordinal) - Alphabet.IndexOf(good[at + 1], StringComparison.Ordinal) + 36)
                    % 36;
                if (step is 0 or 1 or 35)
                    continue;
                if (Holds(good[..at] + good[at + 1] + good[at] + good[(at + 2)..]))
                    return false;
            }
            return true;
        });

    // The system itself lets these through (shown by trying all): the documentation says so, and this keeps it honest.
    [Fact]
    public void One_in_thirty_six_swaps_of_letters_that_follow_each_other_slips_through()
    {
        var (swaps, missed) = (0, 0);
        foreach (var first in Alphabet)
        {
            for (var i = 0; i < Alphabet.Length; i++)
            {
                var (a, b) = (Alphabet[i], Alphabet[(i + 1) % Alphabet.Length]);
                swaps++;
                if (CheckCharacter.For($"{first}{a}{b}") == CheckCharacter.For($"{first}{b}{a}"))
                    missed++;
            }
        }

        Assert.Equal(1296, swaps);
        Assert.Equal(36, missed);
    }
}
