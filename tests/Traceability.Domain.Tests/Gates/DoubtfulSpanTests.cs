using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Tests.Gates;

public class DoubtfulSpanTests
{
    private static readonly DateTimeOffset Monday = new(2026, 3, 2, 0, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_good_proof_after_a_failed_one_ends_the_doubt_about_what_comes_and_proves_nothing_of_what_was()
    {
        var span = Of(Checked(0, true), Checked(5, false), Checked(6, true)).Single();

        Assert.Equal((At(0), At(6), DoubtCause.Check, At(5)), (span.Since, span.Until, span.Cause, span.FoundAt));
    }

    [Fact]
    public void Every_failure_between_two_good_proofs_is_a_span_of_its_own()
    {
        var spans = Of(Checked(0, true), Checked(5, false), Checked(6, true), Checked(8, false));

        Assert.Equal([(At(0), At(6)), (At(6), (DateTimeOffset?)null)], spans.Select(s => (s.Since, s.Until)));
    }

    [Fact]
    public void What_was_found_bad_and_adjusted_on_the_same_day_leaves_everything_before_in_doubt()
    {
        var span = Of(Calibrated(0, true, 1), Calibrated(30, false, 2), Calibrated(30, true, 3)).Single();

        Assert.Equal((Monday, DoubtCause.Calibration), (span.Since, span.Cause));
        Assert.Equal(Monday.AddDays(31).AddTicks(-10), span.Until);
    }

    [Fact]
    public void A_good_check_in_the_afternoon_does_not_hide_the_calibration_that_failed_that_noon()
    {
        var span = Of(
                Checked(0, true),
                Calibrated(5, false, 1, enteredAfterHours: 12),
                new InstrumentCheck(Guid.NewGuid(), Guid.Empty, 1, 1, true, null, Guid.Empty, At(5).AddHours(9), At(5).AddHours(9))
            )
            .Single();

        Assert.Equal((At(0), At(5).AddHours(9)), (span.Since, span.Until));
    }

    [Fact]
    public void A_hold_is_a_question_that_a_good_proof_answers_once_it_is_lifted()
    {
        Assert.Equal(
            (At(0), null, DoubtCause.Hold),
            Of(Checked(0, true), Held(5)) is [var open] ? (open.Since, open.Until, open.Cause) : default
        );
        Assert.Equal(At(6), Of(Checked(0, true), Held(5), Checked(6, true)).Single().Until);
        Assert.Empty(Of(Checked(0, true), Lifted(5), Checked(6, true)));
        Assert.Single(Of(Checked(0, true), Lifted(5)));
    }

    [Fact]
    public void A_failure_after_a_hold_that_was_lifted_is_a_failure()
    {
        var span = Of(Checked(0, true), Lifted(5), Checked(6, false), Checked(7, true)).Single();

        Assert.Equal((At(0), At(7), DoubtCause.Check), (span.Since, span.Until, span.Cause));
    }

    [Fact]
    public void An_acceptance_counts_for_the_faults_that_were_known_when_it_was_given()
    {
        var spans = Of(Checked(0, true), Held(5));
        var measured = new MeasuredWith(Guid.Empty, "D-1", "verify", "Verify", "RB-1", At(2), At(2), At(2), false, At(5).AddHours(1));

        Assert.Null(measured.DoubtIn(spans));
        Assert.NotNull((measured with { AcceptedAt = At(5).AddHours(-1) }).DoubtIn(spans));
        Assert.NotNull(measured.DoubtIn(Of(Checked(0, true), Held(5), Checked(6, false))));
    }

    [Fact]
    public void What_was_measured_outside_the_span_or_measured_again_is_not_in_doubt()
    {
        var spans = Of(Checked(1, true), Checked(5, false), Checked(6, true));
        var measured = new MeasuredWith(Guid.Empty, "D-1", "verify", "Verify", "RB-1", At(2), At(2), At(2), false, null);

        Assert.NotNull(measured.DoubtIn(spans));
        Assert.Null((measured with { DoneAgain = true }).DoubtIn(spans));
        Assert.Null((measured with { Began = At(0), Ended = At(0.5) }).DoubtIn(spans));
        Assert.Null((measured with { Began = At(7), Ended = At(7) }).DoubtIn(spans));
        Assert.NotNull((measured with { Began = At(0), Ended = At(1.5) }).DoubtIn(spans));
    }

    [Fact]
    public void A_span_covers_work_that_touches_its_first_or_its_last_moment()
    {
        var span = Of(Checked(1, true), Checked(5, false), Checked(6, true)).Single();

        Assert.True(span.Covers(At(0), At(1)) && span.Covers(At(6), At(7)));
        Assert.False(span.Covers(At(0), At(1).AddTicks(-1)) || span.Covers(At(6).AddTicks(1), At(7)));
    }

    [Fact]
    public void Of_several_failures_the_earliest_record_says_since_when_it_is_known()
    {
        var late = Checked(4, false) with { RecordedAt = At(9) };

        Assert.Equal((At(4), At(5)), Of(Checked(1, true), late, Checked(5, false)) is [var s] ? (s.FoundAt, s.KnownAt) : default);
    }

    [Fact]
    public void A_good_calibration_entered_later_counts_from_the_beginning_of_its_day_and_a_bad_one_to_its_end()
    {
        var endOfDay = Monday.AddDays(6).AddTicks(-10);

        Assert.Equal(Monday.AddDays(5), Of(Checked(1, true), Checked(4, false), Calibrated(5, true, 1)).Single().Until);
        Assert.Equal(endOfDay, Of(Checked(1, true), Calibrated(5, false, 1)).Single().FoundAt);
        Assert.Equal(Monday.AddDays(5), Of(Calibrated(5, true, 1), Checked(7, false)).Single().Since);
    }

    [Fact]
    public void A_good_calibration_is_an_adjustment_only_after_a_bad_one_of_the_same_day_entered_before_it()
    {
        var (start, end) = (Monday.AddDays(5), Monday.AddDays(6).AddTicks(-10));
        DateTimeOffset? GoodCountsFrom(params Fact[] before) => Of([.. before, Checked(9, false)])[^1].Since;

        Assert.Equal(end, GoodCountsFrom(Calibrated(5, false, 1), Calibrated(5, true, 2)));
        Assert.Equal(start, GoodCountsFrom(Calibrated(4, false, 1), Calibrated(5, true, 2)));
        Assert.Equal(start, GoodCountsFrom(Calibrated(5, true, 1), Calibrated(5, true, 2)));
        Assert.Equal(start, GoodCountsFrom(Calibrated(3, true, 1), Calibrated(5, true, 2)));
    }

    [Fact]
    public void A_calibration_entered_in_the_first_or_the_last_moment_of_its_day_was_entered_on_it()
    {
        var first = Calibrated(5, false, 1, enteredAfterHours: 0);
        var last = Calibrated(5, true, 1) with { OccurredAt = Monday.AddDays(6).AddTicks(-10) };

        Assert.Equal(Monday.AddDays(5), Of(Checked(1, true), first).Single().FoundAt);
        Assert.Equal(Monday.AddDays(6).AddTicks(-10), Of(Checked(1, true), Checked(4, false), last).Single().Until);
    }

    [Fact]
    public void The_latest_good_proof_counts_from_when_it_was_made()
    {
        InstrumentStanding With(params InstrumentCheck[] checks) =>
            new(new(Guid.NewGuid(), "RB-1", "bench", "Bench", 100, 1, "Hz", Guid.Empty, Monday, Monday), [], checks, []);

        Assert.Equal(At(3), DoubtfulSpan.LastGoodProof(With(Checked(1, true), Checked(3, true), Checked(5, false)), WorkshopCalendar.Utc));
        Assert.Null(DoubtfulSpan.LastGoodProof(With(Checked(5, false)), WorkshopCalendar.Utc));
    }

    [Fact]
    public void What_was_accepted_in_the_very_moment_in_which_fault_and_work_were_recorded_is_accepted()
    {
        var spans = Of(Checked(0, true), Held(5));
        var measured = new MeasuredWith(Guid.Empty, "D-1", "verify", "Verify", "RB-1", At(2), At(2), At(5), false, At(5));

        Assert.Null(measured.DoubtIn(spans));
        Assert.NotNull((measured with { RecordedAt = At(5).AddTicks(1) }).DoubtIn(spans));
        Assert.NotNull((measured with { AcceptedAt = At(5).AddTicks(-1), RecordedAt = At(2) }).DoubtIn(spans));
    }

    private static DateTimeOffset At(double day) => Monday.AddDays(day).AddHours(7);

    private static IReadOnlyList<DoubtfulSpan> Of(params Fact[] facts) =>
        DoubtfulSpan.Of(
            new(
                new(Guid.NewGuid(), "RB-1", "resonance-bench", "Bench", 100, 1, "Hz", Guid.Empty, Monday, Monday),
                [.. facts.OfType<Calibration>()],
                [.. facts.OfType<InstrumentCheck>()],
                [.. facts.OfType<Hold>().Where(h => h.Reason == "open")]
            )
            {
                LiftedHolds = [.. facts.OfType<Hold>().Where(h => h.Reason == "lifted")],
            },
            WorkshopCalendar.Utc
        );

    private static Calibration Calibrated(int day, bool passed, int order, int? enteredAfterHours = null)
    {
        var entered = enteredAfterHours is { } hours ? Monday.AddDays(day).AddHours(hours) : Monday.AddDays(90).AddMinutes(order);
        var on = DateOnly.FromDateTime(Monday.AddDays(day).DateTime);
        return new(Guid.NewGuid(), Guid.Empty, on, on.AddDays(365), "invented", passed, null, Guid.Empty, entered, entered);
    }

    private static InstrumentCheck Checked(int day, bool passed) =>
        new(Guid.NewGuid(), Guid.Empty, 100, passed ? 100 : 103, passed, null, Guid.Empty, At(day), At(day));

    private static Hold Held(int day) => new(Guid.NewGuid(), null, null, Guid.Empty, "open", Guid.Empty, At(day), At(day));

    private static Hold Lifted(int day) => Held(day) with { Reason = "lifted" };
}
