using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;

namespace Traceability.Domain.Tests.Gates;

public class InstrumentRulesTests
{
    private static readonly DateOnly CalibratedOn = new(2026, 1, 10);
    private static readonly DateOnly DueOn = new(2026, 3, 2);

    /// <summary>Midnight there is at 15:00 UTC of the day before.</summary>
    private static readonly TimeZoneInfo NineHoursAhead = TimeZoneInfo.CreateCustomTimeZone(
        "nine hours ahead",
        TimeSpan.FromHours(9),
        null,
        null
    );

    private static InstrumentStanding Tester(bool hasReference = false) =>
        Something.Instrument("insulation-tester", CalibratedOn, DueOn, hasReference);

    private static GateCheck Check(InstrumentStanding[] named, DateTimeOffset at, bool checkedToday = false, TimeZoneInfo? zone = null)
    {
        var stage = ARoute.Stage("insulation") with { InstrumentKinds = ["insulation-tester"], CheckedToday = checkedToday };
        return new APart(ARoute.Of(stage), new Bench { Now = at, Calendar = new(zone ?? TimeZoneInfo.Utc) }) { Instruments = named }.Rule(
            "insulation",
            InstrumentsUsable.Rule
        );
    }

    private static DateTimeOffset Utc(int month, int day, int hour = 12, int minute = 0, int second = 0) =>
        new(2026, month, day, hour, minute, second, TimeSpan.Zero);

    [Fact]
    public void An_instrument_is_usable_on_its_due_day_to_the_last_second() => Check([Tester()], Utc(3, 2, 23, 59, 59)).IsMet();

    [Fact]
    public void An_instrument_is_not_usable_from_the_midnight_after_its_due_day()
    {
        Check([Tester()], Utc(3, 3, 0)).IsNotMet("insulation-tester-1", "ran out on 2 Mar 2026");
        Check([Tester()], Utc(3, 1)).IsMet();
    }

    [Fact]
    public void The_due_day_ends_at_the_workshops_midnight_not_at_that_of_universal_time()
    {
        Check([Tester()], Utc(3, 2, 14, 59, 59), zone: NineHoursAhead).IsMet();
        Check([Tester()], Utc(3, 2, 15), zone: NineHoursAhead).IsNotMet("ran out");
    }

    [Fact]
    public void A_calibration_counts_from_its_own_day_and_not_before()
    {
        Check([Tester()], Utc(1, 9, 23, 59, 59)).IsNotMet("never calibrated");
        Check([Tester()], Utc(1, 10, 0)).IsMet();
    }

    [Fact]
    public void An_instrument_found_out_of_tolerance_is_not_usable_although_an_older_calibration_has_not_run_out()
    {
        var tester = Tester();
        var failed = tester.Calibrations[0] with { CalibratedOn = new(2026, 2, 1), DueOn = new(2027, 2, 1), Passed = false };

        Check([tester with { Calibrations = [.. tester.Calibrations, failed] }], Utc(2, 1)).IsNotMet("out of tolerance on 1 Feb 2026");
        Check([tester with { Calibrations = [.. tester.Calibrations, failed] }], Utc(1, 31)).IsMet();
    }

    [Fact]
    public void Of_two_calibrations_on_one_day_the_later_recorded_counts()
    {
        var tester = Tester();
        var failed = tester.Calibrations[0] with { Passed = false };
        var repaired = failed with { Passed = true, RecordedAt = failed.RecordedAt.AddHours(2) };

        Check([tester with { Calibrations = [repaired, failed] }], Utc(2, 1)).IsMet();
    }

    [Fact]
    public void A_held_instrument_is_not_usable()
    {
        var hold = new Hold(Guid.Empty, null, null, Guid.Empty, "dropped", Guid.Empty, default, default);

        Check([Tester() with { OpenHolds = [hold] }], Utc(2, 1)).IsNotMet("on hold: dropped");
    }

    [Fact]
    public void A_missing_kind_is_named()
    {
        Check([], Utc(2, 1)).IsNotMet("no instrument of kind insulation-tester");
        Check([Something.Instrument("balance", CalibratedOn, DueOn)], Utc(2, 1)).IsNotMet("no instrument of kind insulation-tester");
    }

    [Fact]
    public void An_instrument_named_beyond_those_asked_for_must_be_in_calibration_too() =>
        Check([Tester(), Something.Instrument("balance", CalibratedOn, new(2026, 1, 31))], Utc(2, 1)).IsNotMet("balance-1");

    [Theory]
    [InlineData(1, 14, 59, 59, false)]
    [InlineData(1, 15, 0, 0, true)]
    [InlineData(2, 14, 59, 59, true)]
    [InlineData(2, 15, 0, 0, false)]
    public void The_check_of_the_day_counts_from_the_workshops_midnight_to_the_next(int day, int hour, int minute, int second, bool sameDay)
    {
        var noonOfTheSecond = Utc(3, 2, 3);
        var tester = Tester(hasReference: true).Checked(Utc(3, day, hour, minute, second));

        var check = Check([tester], noonOfTheSecond, checkedToday: true, NineHoursAhead);

        Assert.Equal(sameDay, check.Met);
        Assert.Contains(
            sameDay ? "in calibration" : "was not checked against its reference on 2 Mar 2026",
            check.Because,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Of_two_checks_on_a_day_the_later_counts()
    {
        var (morning, evening) = (Utc(2, 1, 8), Utc(2, 1, 10));

        Check([Tester(true).Checked(morning).Checked(evening, passed: false)], Utc(2, 1), true).IsNotMet("failed its check on 1 Feb 2026");
        Check([Tester(true).Checked(evening).Checked(morning, passed: false)], Utc(2, 1), true).IsMet();
    }

    [Fact]
    public void No_check_is_asked_for_where_the_route_does_not_or_the_instrument_has_no_reference()
    {
        Check([Tester(hasReference: true)], Utc(2, 1), checkedToday: false).IsMet();
        Check([Tester(hasReference: false)], Utc(2, 1), checkedToday: true).IsMet();
    }

    [Fact]
    public void The_calibration_in_force_is_kept_with_the_attempt()
    {
        var tester = Tester();
        var part = new APart(ARoute.Plain) { Instruments = [tester] };

        var use = part.TryOpen("mount").Facts.OfType<InstrumentUse>().Single();

        Assert.Equal((tester.Instrument.Id, tester.Calibrations[0].Id), (use.InstrumentId, use.CalibrationId!.Value));
    }

    [Theory]
    [InlineData(2, true, InstrumentState.Usable)]
    [InlineData(2, false, InstrumentState.Held)]
    [InlineData(2, null, InstrumentState.Due)]
    [InlineData(3, true, InstrumentState.Due)]
    public void The_one_word_for_an_instrument_follows_calibration_and_check(int day, bool? checkPassed, InstrumentState state)
    {
        var tester = checkPassed is { } passed ? Tester(true).Checked(Utc(3, day), passed) : Tester(true);

        Assert.Equal(state, tester.StateOn(new(2026, 3, day), new(TimeZoneInfo.Utc)));
    }
}
