using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Work.Studies;

/// <summary>One place in the table of a study.</summary>
public sealed record StudyCell(string Piece, string Person, int Trial);

/// <summary>A study with its readings.</summary>
public sealed record StudyView(MeasurementStudy Study, IReadOnlyList<MeasurementStudyReading> Readings)
{
    /// <summary>Every cell in the order of measuring: all pieces by one person, then the next person, then all again.</summary>
    public IEnumerable<StudyCell> Cells =>
        from trial in Enumerable.Range(1, Study.Repeats)
        from person in Study.People
        from piece in Study.Pieces
        select new StudyCell(piece, person, trial);

    /// <summary>The reading that counts in each cell: the latest.</summary>
    public IReadOnlyDictionary<StudyCell, MeasurementStudyReading> Counting =>
        Readings
            .GroupBy(r => new StudyCell(r.Piece, r.Person, r.Trial))
            .ToDictionary(g => g.Key, g => g.OrderBy(r => r.RecordedAt).ThenBy(r => r.Id).Last());

    /// <summary>The cells that are still empty, in the order of measuring.</summary>
    public IReadOnlyList<StudyCell> Missing
    {
        get
        {
            var counting = Counting;
            return [.. Cells.Where(c => !counting.ContainsKey(c))];
        }
    }
}

/// <summary>Designs a study, and takes readings into it.</summary>
public static class MeasureForStudy
{
    /// <summary>Leads to the design. People are named by their badges.</summary>
    public static Decision<MeasurementStudy> Design(MeasurementStudy design)
    {
        Refusal? problem =
            string.IsNullOrWhiteSpace(design.Title) ? Refusal.Invalid("title", RefusalTexts.GiveTheStudyATitle)
            : string.IsNullOrWhiteSpace(design.Characteristic) ? Refusal.Invalid("characteristic", RefusalTexts.SayWhatIsMeasured)
            : string.IsNullOrWhiteSpace(design.InstrumentKind)
                ? Refusal.Invalid("instrumentKind", RefusalTexts.SayWithWhichKindOfInstrument)
            : !Units.TryFind(design.Unit, out _, out var unknown) ? Refusal.Invalid("unit", unknown)
            : Problem("parts", design.Pieces, 50)
                ?? Problem("people", design.People, 20)
                ?? (
                    design.Repeats is < 2 or > 10 ? Refusal.Invalid("repeats", RefusalTexts.EachPieceIsMeasuredToTimes)
                    : design.Lower >= design.Upper ? Refusal.Invalid("upper", RefusalTexts.UpperLimitLiesAboveTheLower)
                    : null
                );
        return problem is not null ? problem : Decision.Accept(design, design);
    }

    /// <summary>Leads to one reading; an earlier one of the same cell is superseded only with a reason.</summary>
    public static Decision<MeasurementStudyReading> Take(
        StudyView view,
        StudyCell cell,
        EnteredDecimal number,
        Instrument? instrument,
        string? reason,
        Stamp stamp
    )
    {
        var study = view.Study;
        Refusal? problem =
            !study.Pieces.Contains(cell.Piece) ? Refusal.Invalid("part", RefusalTexts.StudyHasThePieces(string.Join(", ", study.Pieces)))
            : !study.People.Contains(cell.Person)
                ? Refusal.Invalid("person", RefusalTexts.StudyHasThePeople(string.Join(", ", study.People)))
            : cell.Trial < 1 || cell.Trial > study.Repeats ? Refusal.Invalid("trial", RefusalTexts.StudyHasTheRepeatsTo(study.Repeats))
            : number.IsGreaterThan ? Refusal.Invalid("value", RefusalTexts.StudyTakesMeasuredValuesNotBounds)
            : instrument is not null && instrument.Kind != study.InstrumentKind
                ? Refusal.Invalid(
                    "instrument",
                    RefusalTexts.StudyAsksForAnotherInstrument(instrument.Code, instrument.Kind, study.InstrumentKind)
                )
            : view.Counting.TryGetValue(cell, out var earlier) && string.IsNullOrWhiteSpace(reason)
                ? Refusal.Conflict(
                    RefusalTexts.StudyValueIsThereAlready(cell.Piece, cell.Person, cell.Trial, earlier.Digits),
                    RefusalCode.DuplicateReading
                )
            : null;
        if (problem is not null)
        {
            return problem;
        }

        var reading = new MeasurementStudyReading(
            stamp.NewId(),
            study.Id,
            cell.Piece,
            cell.Person,
            cell.Trial,
            number.Value,
            number.Digits,
            instrument?.Id,
            string.IsNullOrWhiteSpace(reason) ? null : reason.Trim(),
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        return Decision.Accept(reading, reading);
    }

    private static Refusal? Problem(string field, string[] names, int most) =>
        names.Length < 2 || names.Length > most ? Refusal.Invalid(field, RefusalTexts.StudyHasTwoToMost(most))
        : names.Any(string.IsNullOrWhiteSpace) || names.Any(n => n.Length > 60) ? Refusal.Invalid(field, RefusalTexts.EachHasANameOfAtMost)
        : names.Distinct(StringComparer.Ordinal).Count() < names.Length ? Refusal.Invalid(field, RefusalTexts.EachIsNamedOnce)
        : null;
}
