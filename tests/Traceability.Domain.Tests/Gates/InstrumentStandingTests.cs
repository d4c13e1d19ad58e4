using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Values;

namespace Traceability.Domain.Tests.Gates;

/// <summary>The one word that lists show of an instrument.</summary>
public class InstrumentStandingTests
{
    private static readonly DateTimeOffset Noon = new(2026, 3, 2, 12, 0, 0, TimeSpan.Zero);
    private static readonly InstrumentStanding Plain = Something.Instrument("scale", new(2026, 1, 10), new(2026, 3, 2));
    private static readonly InstrumentStanding Proved = Something.Instrument(
        "scale",
        new(2026, 1, 10),
        new(2026, 3, 2),
        hasReference: true
    );

    private static InstrumentState On(InstrumentStanding i, int day = 2) => i.StateOn(new(2026, 3, day), WorkshopCalendar.Utc);

    [Fact]
    public void An_instrument_is_usable_to_its_last_day_and_due_after_it() =>
        Assert.Equal((InstrumentState.Usable, InstrumentState.Due), (On(Plain), On(Plain, 3)));

    [Fact]
    public void One_with_a_reference_is_due_until_it_is_checked_that_day()
    {
        Assert.Equal(InstrumentState.Due, On(Proved));
        Assert.Equal(InstrumentState.Due, On(Proved.Checked(Noon.AddDays(-1))));
        Assert.Equal(InstrumentState.Usable, On(Proved.Checked(Noon)));
    }

    [Fact]
    public void A_hold_a_failed_calibration_or_a_failed_check_each_stop_it()
    {
        var hold = new Hold(Guid.NewGuid(), null, null, Plain.Instrument.Id, "dropped", Guid.Empty, Noon, Noon);

        Assert.Equal(InstrumentState.Held, On(Plain with { OpenHolds = [hold] }));
        Assert.Equal(InstrumentState.Held, On(Plain with { Calibrations = [Plain.Calibrations[0] with { Passed = false }] }));
        Assert.Equal(InstrumentState.Held, On(Proved.Checked(Noon.AddHours(-1)).Checked(Noon, passed: false)));
        Assert.Equal(InstrumentState.Usable, On(Proved.Checked(Noon.AddHours(-1), passed: false).Checked(Noon)));
    }
}
