using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Reports;
using Traceability.Domain.Records;
using static Traceability.Domain.Tests.Quality.Reports.AMonth;

namespace Traceability.Domain.Tests.Quality.Reports;

public class MonthInstrumentTests
{
    [Fact]
    public void Instruments_are_told_by_what_they_need_at_the_end_of_the_month()
    {
        InstrumentStanding[] instruments =
        [
            Instrument("OK", new(2026, 1, 1), new(2027, 1, 1)),
            Instrument("SOON", new(2026, 1, 1), new(2026, 11, 10)),
            Instrument("LATE", new(2026, 1, 1), new(2026, 10, 1)),
            Instrument("WRONG", new(2026, 10, 9), new(2027, 10, 9), passed: false),
            Instrument("NEVER", null, null),
            Instrument("HELD", new(2026, 1, 1), new(2027, 1, 1)),
            Instrument("LATER", new(2026, 11, 1), new(2027, 11, 1)),
        ];
        var section = MonthlyReport
            .Of(Facts() with { Instruments = instruments, Holds = [new("instrument", "HELD", "dropped", At(10, 3), "Edda")] })
            .Instruments;
        Assert.Equal(
            [
                ("HELD", "on hold: dropped"),
                ("WRONG", "found wrong at its latest calibration"),
                ("LATER", "never calibrated"),
                ("NEVER", "never calibrated"),
                ("LATE", "overdue for 30 days"),
                ("SOON", "due in 10 days"),
            ],
            section.Lines.Select(l => (l.Code, l.Why))
        );
        Assert.Equal(7, section.Instruments);
    }

    /// <summary>
    /// A workshop enters its instruments when it begins to use the program; they were there before, and what they needed then is told.
    /// </summary>
    [Fact]
    public void An_instrument_belongs_to_every_month_in_which_something_is_known_of_it_whenever_it_was_registered()
    {
        InstrumentStanding calibrated = Registered(Instrument("CALIBRATED", new(2026, 3, 1), new(2026, 11, 10)), At(11, 1)),
            proved = Registered(Instrument("PROVED", null, null), At(11, 1));
        proved = proved with
        {
            Checks = [new(Guid.NewGuid(), proved.Instrument.Id, 10, 10, true, null, Guid.Empty, At(10, 20), At(11, 1))],
        };
        var section = MonthlyReport
            .Of(
                Facts() with
                {
                    Instruments = [calibrated, proved, Registered(Instrument("NEW", new(2026, 11, 1), new(2027, 11, 1)), At(11, 1))],
                }
            )
            .Instruments;
        Assert.Equal([("PROVED", "never calibrated"), ("CALIBRATED", "due in 10 days")], section.Lines.Select(l => (l.Code, l.Why)));
        Assert.Equal(2, section.Instruments);
    }
}
