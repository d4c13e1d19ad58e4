using Traceability.Domain.Quality.Tracing;
using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Tests.Quality;

public sealed class InstrumentDoubtTests
{
    private static readonly DateTimeOffset Monday = new(2026, 3, 2, 0, 0, 0, TimeSpan.Zero);

    [Fact]
    public void An_instrument_found_wrong_is_doubted_from_its_last_good_proof_until_its_next()
    {
        var doubt = Of([Calibrated(0, true), Calibrated(30, false), Calibrated(33, true)], [Checked(10, true), Checked(20, false)]);
        Assert.Equal(new InstrumentDoubt(Monday.AddDays(10).AddHours(7), Monday.AddDays(33), Monday.AddDays(20).AddHours(7)), doubt);
    }

    [Fact]
    public void The_doubt_lasts_while_no_good_proof_has_followed()
    {
        Assert.Equal(
            (Monday, null, true),
            Of([Calibrated(0, true), Calibrated(30, false)], []) is var d ? (d.Since, d.Until, d.FoundAt is not null) : default
        );
    }

    [Fact]
    public void A_good_check_in_the_morning_of_the_day_on_which_calibration_fails_is_the_last_good_proof()
    {
        Assert.Equal(Monday.AddDays(30).AddHours(7), Of([Calibrated(0, true), Calibrated(30, false)], [Checked(30, true)]).Since);
    }

    [Fact]
    public void An_instrument_that_was_never_found_wrong_is_asked_about_from_its_latest_good_proof()
    {
        Assert.Equal(new InstrumentDoubt(Monday.AddDays(5).AddHours(7), null, null), Of([Calibrated(0, true)], [Checked(5, true)]));
    }

    [Fact]
    public void An_instrument_without_any_good_proof_is_doubted_from_the_beginning()
    {
        Assert.Null(Of([Calibrated(3, false)], []).Since);
        Assert.Null(Of([], []).Since);
    }

    private static InstrumentDoubt Of(IReadOnlyList<Calibration> calibrations, IReadOnlyList<InstrumentCheck> checks) =>
        InstrumentDoubt.Of(
            new(
                new(Guid.NewGuid(), "CM-1", "capacitance-meter", "Capacitance meter", 100, 1, "pF", Guid.Empty, Monday, Monday),
                calibrations,
                checks,
                []
            ),
            WorkshopCalendar.Utc
        );

    private static Calibration Calibrated(int day, bool passed) =>
        new(
            Guid.NewGuid(),
            Guid.Empty,
            DateOnly.FromDateTime(Monday.AddDays(day).DateTime),
            DateOnly.FromDateTime(Monday.AddDays(day + 365).DateTime),
            "invented",
            passed,
            null,
            Guid.Empty,
            Monday.AddDays(90),
            Monday.AddDays(90)
        );

    private static InstrumentCheck Checked(int day, bool passed) =>
        new(
            Guid.NewGuid(),
            Guid.Empty,
            100,
            passed ? 100 : 103,
            passed,
            null,
            Guid.Empty,
            Monday.AddDays(day).AddHours(7),
            Monday.AddDays(day).AddHours(7)
        );
}
