using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Tests.Gates.Vocabulary;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;

namespace Traceability.Domain.Tests.Work.BenchWork;

/// <summary>What an instrument sends under its own token can be followed to the instrument and to its calibration.</summary>
public class SendReadingTests
{
    private static readonly InstrumentStanding Meter = Something.Instrument("lcr-meter", new(2026, 1, 10), new(2026, 3, 2));

    private static APart Measuring(params string[] kinds) =>
        new(ARoute.Of(ARoute.Stage("measure").Measuring("capacitancePf", 60, 80) with { InstrumentKinds = kinds }));

    private static APart Named()
    {
        var part = Measuring("lcr-meter");
        part.Instruments = [Meter];
        return part.Opened("measure");
    }

    /// <summary>The attempt was begun with another meter of the kind.</summary>
    private static APart NotNamed(params string[] kinds)
    {
        var part = Measuring(kinds);
        part.Instruments = [.. kinds.Select(k => Something.Instrument(k, new(2026, 1, 10), new(2026, 3, 2)))];
        return part.Opened("measure");
    }

    private static Decision<IReadOnlyList<Reading>> Send(APart part, InstrumentStanding? with = null, bool mustBeNamed = false) =>
        Readings.Send(
            part.Dossier,
            part.Dossier.OpenAttempt!.Id,
            [new("capacitancePf", Numbers.Typed("70"))],
            with ?? Meter,
            mustBeNamed,
            WorkshopCalendar.Utc,
            part.Bench.Stamp(Somebody.Builder)
        );

    [Fact]
    public void A_reading_of_an_instrument_that_the_attempt_names_is_taken_as_the_instruments()
    {
        var reading = Assert.IsType<Reading>(Assert.Single(Send(Named(), mustBeNamed: true).Facts));

        Assert.Equal((ReadingSource.Instrument, "70", true), (reading.Source, reading.Digits, reading.Met));
    }

    [Fact]
    public void At_a_station_an_instrument_of_the_kind_asked_for_need_not_be_named_and_its_use_is_recorded()
    {
        var decision = Send(NotNamed("lcr-meter"));

        var use = Assert.IsType<InstrumentUse>(decision.Facts[0]);
        Assert.Equal(
            (Meter.Instrument.Id, "lcr-meter-1", "lcr-meter", Meter.Calibrations[0].Id),
            (use.InstrumentId, use.InstrumentCode, use.InstrumentKind, use.CalibrationId)
        );
        Assert.Equal(decision.Accepted(), decision.Facts.Skip(1).Cast<Reading>());
    }

    [Fact]
    public void Where_it_must_be_named_one_that_is_not_is_refused() =>
        Assert.Equal(
            RefusalCode.InstrumentNotNamed,
            Send(NotNamed("lcr-meter"), mustBeNamed: true).IsRefused(RefusalKind.Forbidden, "lcr-meter-1").Code
        );

    [Fact]
    public void An_instrument_of_another_kind_than_the_stage_asks_for_is_refused() =>
        Assert.Equal(
            RefusalCode.InstrumentOfAnotherKind,
            Send(NotNamed("scale")).IsRefused(RefusalKind.Conflict, "lcr-meter", "scale").Code
        );

    [Fact]
    public void A_stage_that_asks_for_no_instrument_takes_none_that_it_does_not_name() =>
        Assert.Equal(RefusalCode.InstrumentOfAnotherKind, Send(NotNamed()).IsRefused(RefusalKind.Conflict, "Measure", "lcr-meter-1").Code);

    [Fact]
    public void An_instrument_that_the_attempt_names_need_not_be_of_a_kind_that_the_stage_asks_for()
    {
        var part = Measuring();
        part.Instruments = [Meter];

        Send(part.Opened("measure")).Accepted();
    }

    [Fact]
    public void An_instrument_on_hold_is_refused_with_the_reason_and_one_out_of_tolerance_with_that()
    {
        var held = Meter with
        {
            OpenHolds = [new(Guid.NewGuid(), null, null, Meter.Instrument.Id, "dropped", Guid.Empty, default, default)],
        };
        var bad = Meter with { Calibrations = [Meter.Calibrations[0] with { Passed = false }] };

        Assert.Equal(RefusalCode.InstrumentNotUsable, Send(Named(), held).IsRefused(RefusalKind.Conflict, "dropped").Code);
        Assert.Equal(RefusalCode.InstrumentNotUsable, Send(Named(), bad).IsRefused(RefusalKind.Conflict, "tolerance").Code);
    }

    [Fact]
    public void An_instrument_sends_to_the_end_of_the_last_day_of_its_calibration_and_not_after_it()
    {
        var part = Named();
        part.Bench.Now = new(2026, 3, 2, 23, 59, 59, TimeSpan.Zero);
        Send(part).Accepted();

        part.Bench.Now = part.Bench.Now.AddSeconds(1);
        Assert.Equal(RefusalCode.InstrumentNotUsable, Send(part).IsRefused(RefusalKind.Conflict, "lcr-meter-1").Code);
    }

    [Fact]
    public void A_value_that_is_refused_leaves_no_use_behind()
    {
        var part = NotNamed("lcr-meter");
        part.TryRead(("capacitancePf", "65")).Accepted();

        Assert.Equal(RefusalCode.DuplicateReading, Send(part).IsRefused(RefusalKind.Conflict, "65").Code);
    }

    [Fact]
    public void An_attempt_names_the_instruments_that_it_was_begun_with_and_no_others()
    {
        var part = Named();
        var attempt = part.Dossier.OpenAttempt!.Id;

        Assert.True(Readings.IsNamed(part.Dossier, attempt, Meter.Instrument.Id));
        Assert.False(Readings.IsNamed(part.Dossier, attempt, Guid.NewGuid()));
        Assert.False(Readings.IsNamed(part.Dossier, Guid.NewGuid(), Meter.Instrument.Id));
    }
}
