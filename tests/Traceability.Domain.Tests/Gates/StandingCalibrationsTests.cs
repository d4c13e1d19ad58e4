using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Domain.Tests.Gates;

public sealed class StandingCalibrationsTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);

    [Fact]
    public void What_a_correction_took_the_place_of_counts_no_more()
    {
        var wrong = Entered(0, true);
        var right = Correcting(wrong, 5, false);
        Assert.Equal([right.Id], StandingCalibrations.Of([wrong, right]).Select(c => c.Id));
    }

    [Fact]
    public void A_correction_that_leaves_day_and_verdict_is_known_since_the_first_entry_and_one_that_changes_them_since_its_own()
    {
        var wrong = Entered(0, true);
        var (first, second) = (Correcting(wrong, 5, true), Correcting(wrong, 5, false));
        Assert.Equal(wrong.RecordedAt, StandingCalibrations.Of([wrong, first]).Single().RecordedAt);
        Assert.Equal(wrong.RecordedAt, StandingCalibrations.Of([wrong, first, Correcting(first, 9, true)]).Single().RecordedAt);
        Assert.Equal(second.RecordedAt, StandingCalibrations.Of([wrong, second]).Single().RecordedAt);
    }

    [Fact]
    public void An_id_made_of_a_name_is_always_the_same_and_another_for_another_sort()
    {
        Assert.Equal(NamedSubject.Of(SetupSort.Model, "TARN-1"), NamedSubject.Of(SetupSort.Model, "TARN-1"));
        Assert.NotEqual(NamedSubject.Of(SetupSort.Model, "TARN-1"), NamedSubject.Of(SetupSort.Kind, "TARN-1"));
        Assert.Equal(8, NamedSubject.Of(SetupSort.Model, "TARN-1").Version);
    }

    private static Calibration Entered(int hour, bool passed) =>
        new(
            Guid.NewGuid(),
            Guid.Empty,
            new(2026, 3, 1),
            new(2027, 3, 1),
            "C-1",
            passed,
            null,
            Guid.Empty,
            Start.AddHours(hour),
            Start.AddHours(hour)
        );

    private static Calibration Correcting(Calibration wrong, int hour, bool passed) =>
        Entered(hour, passed) with
        {
            Replaces = wrong.Id,
            ReplacesBecause = "typed wrong",
        };
}
