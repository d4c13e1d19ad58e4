using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Tracing;
using Traceability.Domain.Tests.Gates.Vocabulary;

namespace Traceability.Domain.Tests.Quality;

/// <summary>The check of an instrument after a test says whether its readings may be believed.</summary>
public class ProofAfterTests
{
    private static readonly InstrumentStanding Tester = Something.Instrument(
        "insulation-tester",
        new(2026, 1, 1),
        new(2026, 12, 31),
        hasReference: true
    );

    private static IReadOnlyList<string> Said(
        DateTimeOffset now,
        bool checkedToday = true,
        params (DateTimeOffset At, bool Passed)[] checks
    )
    {
        var stage = ARoute.Stage("insulation") with { InstrumentKinds = ["insulation-tester"], CheckedToday = checkedToday };
        var proved = Tester.Checked(At(2, 7));
        var part = new APart(ARoute.Of(stage), new Bench { Now = At(2, 10) }) { Instruments = [proved] };
        part.Opened("insulation").TryClose().Accepted();
        var after = checks.Aggregate(proved, (i, c) => i.Checked(c.At, c.Passed));
        return ProofAfter.Of(part.Dossier.Attempts[0], stage, [after], now, new(TimeZoneInfo.Utc));
    }

    private static DateTimeOffset At(int day, int hour) => new(2026, 3, day, hour, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_good_check_after_the_test_on_the_same_day_leaves_nothing_to_say() =>
        Assert.Empty(Said(At(5, 0), true, (At(2, 17), true)));

    [Fact]
    public void While_the_day_lasts_the_check_is_still_to_be_made() =>
        Assert.Contains("still to be checked", Assert.Single(Said(At(2, 16))), StringComparison.Ordinal);

    [Fact]
    public void After_the_day_a_missing_check_is_said() =>
        Assert.Contains(
            "was not checked against its reference again after this test",
            Assert.Single(Said(At(3, 1))),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_good_check_on_a_later_day_is_named_but_does_not_stand_for_the_missing_one() =>
        Assert.Contains(
            "not checked against its reference again on the day",
            Assert.Single(Said(At(5, 0), true, (At(3, 7), true))),
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    public void The_first_check_after_the_test_puts_the_readings_in_doubt_when_it_fails_whichever_day(int day) =>
        Assert.Contains(
            "readings are in doubt",
            Assert.Single(Said(At(5, 0), true, (At(day, 17), false), (At(day, 18), true))),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_stage_that_asks_for_no_check_on_the_day_says_nothing() => Assert.Empty(Said(At(5, 0), checkedToday: false));

    [Fact]
    public void A_failed_check_puts_in_doubt_everything_since_the_last_good_one()
    {
        var doubt = InstrumentDoubt.Of(Tester.Checked(At(2, 7)).Checked(At(2, 17), false), new(TimeZoneInfo.Utc));

        Assert.Equal((At(2, 7), At(2, 17)), (doubt.Since, doubt.FoundAt));
    }
}
