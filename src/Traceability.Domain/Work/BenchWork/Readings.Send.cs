using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Work.BenchWork;

/// <summary>Takes what an instrument sends under its own token.</summary>
public static partial class Readings
{
    /// <summary>
    /// Leads to the readings and, where the attempt did not name the instrument yet, to its use, so that every reading can be followed to
    /// the instrument and to the calibration then in force.
    /// </summary>
    /// <param name="dossier">The part.</param>
    /// <param name="attemptId">The attempt into which it sends.</param>
    /// <param name="values">What it sends.</param>
    /// <param name="instrument">The instrument.</param>
    /// <param name="mustBeNamed">True where the attempt must have named it; at a station it need not be, but the stage must ask for its
    /// kind.</param>
    /// <param name="calendar">The workshop's calendar.</param>
    /// <param name="stamp">When.</param>
    public static Decision<IReadOnlyList<Reading>> Send(
        Dossier dossier,
        Guid attemptId,
        IReadOnlyList<EnteredValue> values,
        InstrumentStanding instrument,
        bool mustBeNamed,
        WorkshopCalendar calendar,
        Stamp stamp
    )
    {
        var named = IsNamed(dossier, attemptId, instrument.Instrument.Id);
        if (!named && mustBeNamed)
        {
            return NotNamed(instrument.Instrument.Code);
        }

        var day = calendar.DayOf(stamp.OccurredAt);
        if (Unusable(instrument, day, calendar) is { } problem)
        {
            return problem;
        }

        if (!named && WrongKind(dossier, attemptId, instrument.Instrument) is { } other)
        {
            return other;
        }

        var taken = Readings.Take(dossier, attemptId, values, ReadingSource.Instrument, new(stamp.OccurredAt, calendar), stamp);
        return taken.Refusal is not null || named
            ? taken
            : Decision.Accept<IReadOnlyList<Reading>>(taken.Value!, [UseOf(dossier, attemptId, instrument, day, stamp), .. taken.Facts]);
    }

    /// <summary>True when the attempt names the instrument.</summary>
    public static bool IsNamed(Dossier dossier, Guid attemptId, Guid instrumentId) =>
        dossier.Attempts.Any(a => a.Id == attemptId && a.Instruments.Any(i => i.InstrumentId == instrumentId));

    /// <summary>The refusal of an instrument that an attempt does not name.</summary>
    public static Refusal NotNamed(string code) =>
        Refusal.Forbidden(RefusalTexts.InstrumentIsNotNamed(code), RefusalCode.InstrumentNotNamed);

    private static Refusal? WrongKind(Dossier dossier, Guid attemptId, Instrument instrument)
    {
        var stage = dossier.Route.Find(dossier.Attempts.FirstOrDefault(a => a.Id == attemptId)?.Stage ?? "");
        var words =
            stage is null || stage.InstrumentKinds.Contains(instrument.Kind) ? null
            : stage.InstrumentKinds.Count == 0 ? RefusalTexts.StageAsksForNoInstrument(stage.Title, dossier.Part.Serial, instrument.Code)
            : RefusalTexts.StageAsksForOtherInstruments(
                stage.Title,
                dossier.Part.Serial,
                instrument.Code,
                instrument.Kind,
                string.Join(", ", stage.InstrumentKinds)
            );
        return words is null ? null : Refusal.Conflict(words, RefusalCode.InstrumentOfAnotherKind);
    }

    private static Refusal? Unusable(InstrumentStanding instrument, DateOnly day, WorkshopCalendar calendar) =>
        instrument.StateOn(day, calendar) switch
        {
            InstrumentState.Held => Refusal.Conflict(
                instrument.OpenHolds.Count > 0
                    ? RefusalTexts.InstrumentIsOnHold(
                        instrument.Instrument.Code,
                        string.Join("; ", instrument.OpenHolds.Select(h => h.Reason))
                    )
                    : RefusalTexts.InstrumentWasOutOfTolerance(instrument.Instrument.Code),
                RefusalCode.InstrumentNotUsable
            ),
            InstrumentState.Retired => Refusal.Conflict(
                RefusalTexts.InstrumentIsRetired(instrument.Instrument.Code, instrument.Retired!.Reason),
                RefusalCode.InstrumentNotUsable
            ),
            InstrumentState.Due => Refusal.Conflict(
                RefusalTexts.InstrumentIsDue(instrument.Instrument.Code),
                RefusalCode.InstrumentNotUsable
            ),
            _ => null,
        };

    private static InstrumentUse UseOf(Dossier dossier, Guid attemptId, InstrumentStanding i, DateOnly day, Stamp stamp) =>
        new(
            stamp.NewId(),
            dossier.Part.Id,
            attemptId,
            i.Instrument.Id,
            i.Instrument.Code,
            i.Instrument.Kind,
            i.InForce(day)?.Id,
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
}
