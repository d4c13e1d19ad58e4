using CsCheck;
using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Standings;

namespace Traceability.Domain.Tests.Gates;

/// <summary>Of several things that a part is, the first in the fixed order is said, whatever else is true of it.</summary>
public class StandingProperties
{
    private static readonly DateTimeOffset Then = new(2026, 2, 1, 8, 0, 0, TimeSpan.Zero);

    private static readonly Gen<Exit> AnyExit = Gen.Select(
        Gen.Bool,
        Gen.Bool,
        Gen.Bool,
        (scrapped, shipped, returned) =>
            new Exit(
                scrapped ? "crushed" : null,
                shipped ? new Departure(Then, "Studio Reed", returned ? Then.AddDays(9) : null, returned ? "hums" : null) : null
            )
    );

    private static readonly Gen<IReadOnlyList<string>> AnyReasons = Gen.Int[0, 2]
        .Select(IReadOnlyList<string> (n) => [.. Enumerable.Range(1, n).Select(i => $"reason {i}")]);

    private static readonly Gen<StageGrounds?> AnyStage = Gen.Select(
        Gen.Bool,
        Gen.Enum<StageState>(),
        StageGrounds? (none, state) =>
            none || state == StageState.Passed
                ? null
                : new("Tune", state, state == StageState.Waiting ? Then : null, state == StageState.Open ? null : "not yet")
    );

    private static readonly Gen<StandingGrounds> AnyGrounds = Gen.Select(
        AnyExit,
        AnyReasons,
        AnyReasons,
        AnyReasons,
        AnyStage,
        Gen.Bool,
        Gen.Bool,
        (exit, holds, quarantines, found, stage, fitted, unit) =>
            new StandingGrounds
            {
                Exit = exit,
                Holds = holds,
                Quarantines = quarantines,
                Nonconformities = found,
                Stage = fitted ? null : stage,
                FittedIn = fitted ? "C-9" : null,
                IsUnit = unit,
            }
    );

    [Fact]
    public void The_first_of_scrapped_returned_shipped_held_quarantined_blocked_is_said_and_then_the_rest() =>
        AnyGrounds.Sample(g =>
        {
            (bool True, StandingCode Code)[] inOrder =
            [
                (g.Exit.Scrapped is not null, StandingCode.Scrapped),
                (g.Exit.Departure?.ReturnedAt is not null, StandingCode.Returned),
                (g.Exit.Departure is not null, StandingCode.Shipped),
                (g.Holds.Count > 0, StandingCode.Held),
                (g.Quarantines.Count > 0, StandingCode.Quarantined),
                (g.Nonconformities.Count > 0 || g.Stage?.State is StageState.Blocked or StageState.Later, StandingCode.Blocked),
                (g.FittedIn is not null, StandingCode.Fitted),
                (g.Stage?.State == StageState.Waiting, StandingCode.Waiting),
                (g.Stage is not null, StandingCode.InWork),
                (g.IsUnit, StandingCode.Stock),
                (true, StandingCode.Finished),
            ];
            Assert.Equal(inOrder.First(x => x.True).Code, Standing.Of(g).Code);
        });

    [Fact]
    public void Nothing_that_anything_stands_in_the_way_of_may_go_on() =>
        AnyGrounds.Sample(g =>
        {
            var free =
                g
                    is {
                        Exit.Scrapped: null,
                        Exit.Departure: null,
                        Holds.Count: 0,
                        Quarantines.Count: 0,
                        Nonconformities.Count: 0,
                        FittedIn: null
                    }
                && g.Stage?.State is null or StageState.Open;
            Assert.Equal(free, Standing.Of(g).MayGoOn);
        });

    [Fact]
    public void What_does_not_go_on_says_why_or_where_and_only_what_waits_says_until_when() =>
        AnyGrounds.Sample(g =>
        {
            var standing = Standing.Of(g);
            Assert.Equal(standing.Code == StandingCode.Waiting, standing.Until is not null);
            Assert.True(standing.MayGoOn || standing.Because is not null || standing.Where is not null);
        });

    [Fact]
    public void A_further_hold_never_makes_a_part_freer() =>
        AnyGrounds.Sample(g => Assert.True(Standing.Of(g with { Holds = [.. g.Holds, "another"] }).Code <= Standing.Of(g).Code));

    [Fact]
    public void Every_code_has_a_word_of_its_own() => Assert.Equal(11, Enum.GetValues<StandingCode>().Select(Words.Of).Distinct().Count());
}
