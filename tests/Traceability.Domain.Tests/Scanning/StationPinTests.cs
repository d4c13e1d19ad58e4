using CsCheck;
using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;
using static Traceability.Domain.Tests.Scanning.ScannedLines;

namespace Traceability.Domain.Tests.Scanning;

/// <summary>A PIN is asked for, passed on as it was typed, and neither shown nor kept.</summary>
public class StationPinTests
{
    // A number is shown only when it was asked for as a reading; the readings here are never the PIN unless it was typed as one.
    [Fact]
    public void The_pin_is_in_no_session_and_no_prompt() =>
        Gen.Select(Sequences, Gen.Bool)
            .Sample(
                (lines, moody) =>
                {
                    var bench = Workshop(moody);
                    foreach (var line in lines)
                    {
                        var isPin = line.Contains("7391", StringComparison.Ordinal);
                        if (isPin && bench.Session is { AttemptId: not null, Asks: Question.None })
                            continue; // there it would be a reading
                        if (isPin && bench.Session is { Asks: Question.None, Badge: not null })
                            continue;
                        bench.Type(line);
                    }
                    return bench.Kept.TrueForAll(kept => !kept.Contains("7391", StringComparison.Ordinal));
                }
            );

    [Theory]
    [InlineData("1234")]
    [InlineData("0012")]
    [InlineData("1,234")]
    [InlineData("12345678901234567890")]
    [InlineData("my secret")]
    public void Whatever_is_typed_for_a_pin_reaches_the_check_as_it_was_typed(string typed)
    {
        var bench = Workshop();
        bench.Scan(CodeKind.Badge, "BUILD1");
        bench.Type(typed);

        Assert.Equal(typed, Assert.IsType<StationCommand.Identify>(Assert.Single(bench.Orders)).Pin.Reveal());
        Assert.DoesNotContain(bench.Kept, kept => kept.Contains(typed, StringComparison.Ordinal));
        Assert.Equal(Question.Pin, bench.Session.Asks);
    }

    [Theory]
    [InlineData("BUILD1")]
    [InlineData("build1 ")]
    public void The_own_badge_typed_or_scanned_where_the_PIN_is_asked_is_not_taken_for_a_PIN(string typed)
    {
        var bench = Workshop();
        bench.Scan(CodeKind.Badge, "BUILD1");
        var byHand = bench.Type(typed);
        var byScanner = bench.Scan(CodeKind.Badge, "BUILD1");

        Assert.Equal(
            [(Severity.Ask, "Type your PIN."), (Severity.Ask, "Type your PIN.")],
            new[] { byHand, byScanner }.Select(prompt => (prompt.Severity, prompt.Line))
        );
        Assert.DoesNotContain(bench.Orders, order => order is StationCommand.Identify);
        bench.Type(UnlikelyPin);
        Assert.Equal("BUILD1", bench.Session.Badge);
    }

    [Theory]
    [InlineData("4711")]
    [InlineData("4711 4711")]
    [InlineData("4711x/")]
    public void A_pin_typed_before_the_badge_is_not_shown(string typed)
    {
        var bench = Workshop();
        var prompt = bench.Type(typed);

        Assert.Equal("Scan your badge first.", prompt.Line);
        Assert.DoesNotContain(bench.Kept, kept => kept.Contains("4711", StringComparison.Ordinal));
    }

    [Fact]
    public void Another_badge_takes_over_only_after_its_pin()
    {
        var bench = Workshop().SignedIn();
        bench.Scan(CodeKind.Part, "C26-00001");

        bench.Scan(CodeKind.Badge, "BUILD2");
        Assert.Equal("BUILD1", bench.Session.Badge);
        bench.Type("NO");
        Assert.Equal(("BUILD1", "C26-00001", Question.None), (bench.Session.Badge, bench.Session.Part, bench.Session.Asks));
        bench.Scan(CodeKind.Badge, "BUILD2");
        bench.Type(UnlikelyPin);
        Assert.Equal(("BUILD2", null), (bench.Session.Badge, bench.Session.Part));
    }
}
