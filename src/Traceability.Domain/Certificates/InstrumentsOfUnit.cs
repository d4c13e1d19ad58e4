using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;

namespace Traceability.Domain.Certificates;

/// <summary>
/// The instruments that a unit and what is in it were measured with, each with the calibration in force on the day of the measurement, as
/// it is known now: a calibration whose paper came late counts, one that was made afterwards does not.
/// </summary>
internal static class InstrumentsOfUnit
{
    public static IReadOnlyList<InstrumentRow> Rows(CertificateFacts facts, IReadOnlyList<Dossier> parts, WorkshopCalendar calendar)
    {
        var standings = facts.Instruments.ToDictionary(i => i.Instrument.Id);
        return
        [
            .. from part in parts
            from stage in part.Route.Stages
            let pass = part.CountingPass(stage.Code)
            where pass is not null
            from use in pass.Instruments
            let standing = standings.GetValueOrDefault(use.InstrumentId)
            let calibration = standing?.InForce(calendar.DayOf(MeasuredAt(pass, use)))
            group calibration by (use.InstrumentCode, use.InstrumentKind, standing?.Instrument.Title, calibration?.Id) into used
            let c = used.First()
            orderby used.Key.InstrumentCode, c?.CalibratedOn
            select new InstrumentRow(
                used.Key.InstrumentCode,
                PlainWords.OfCode(used.Key.InstrumentKind),
                c?.CalibratedOn,
                c?.DueOn,
                c?.Reference
            )
            {
                Title = used.Key.Title,
            },
        ];
    }

    /// <summary>
    /// When the last reading of the attempt was taken; an attempt may stay open for days. Without one, when the instrument was taken into
    /// use.
    /// </summary>
    private static DateTimeOffset MeasuredAt(AttemptView pass, InstrumentUse use) =>
        pass.Readings.Where(r => r.Reading.Source != ReadingSource.Computed).Select(r => r.Reading.OccurredAt).Append(use.OccurredAt).Max();
}
