using Traceability.Domain.Quality;
using Traceability.Domain.Quality.GaugeStudy;
using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Work;

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
        Readings.GroupBy(r => new StudyCell(r.Piece, r.Person, r.Trial)).ToDictionary(g => g.Key, g => g.OrderBy(r => r.RecordedAt).ThenBy(r => r.Id).Last());

    /// <summary>The cells that are still empty, in the order of measuring.</summary>
    public IReadOnlyList<StudyCell> Missing
    {
        get
        {
            var counting = Counting;
            return [.. Cells.Where(c => !counting.ContainsKey(c))];
        }
    }

    /// <summary>The analysis of variance; "not enough data" until every cell is filled.</summary>
    public Answer<CrossedGaugeStudy> Result => Missing.Count > 0
        ? new NotEnoughData("readings", Study.Pieces.Length * Study.People.Length * Study.Repeats, Counting.Count)
        : CrossedGaugeStudy.Of([.. Counting.Values.Select(r => new GaugeReading(r.Piece, r.Person, (double)r.Value))]);
}

/// <summary>Designs a study, and takes readings into it.</summary>
public static class MeasureForStudy
{
    /// <summary>Leads to the design. People are named by their badges.</summary>
    public static Decision<MeasurementStudy> Design(MeasurementStudy design)
    {
        Refusal? problem = string.IsNullOrWhiteSpace(design.Title) ? Refusal.Invalid("title", "give the study a title")
            : string.IsNullOrWhiteSpace(design.Characteristic) ? Refusal.Invalid("characteristic", "say what is measured")
            : string.IsNullOrWhiteSpace(design.InstrumentKind) ? Refusal.Invalid("instrumentKind", "say with which kind of instrument")
            : !Units.TryFind(design.Unit, out _, out var unknown) ? Refusal.Invalid("unit", unknown)
            : Problem("parts", design.Pieces, 50) ?? Problem("people", design.People, 20)
            ?? (design.Repeats is < 2 or > 10 ? Refusal.Invalid("repeats", "each piece is measured 2 to 10 times by each person")
            : design.Lower >= design.Upper ? Refusal.Invalid("upper", "the upper limit lies above the lower one")
            : null);
        return problem is not null ? problem : Decision.Accept(design, design);
    }

    /// <summary>Leads to one reading; an earlier one of the same cell is superseded only with a reason.</summary>
    public static Decision<MeasurementStudyReading> Take(StudyView view, StudyCell cell, EnteredDecimal number, Instrument? instrument, string? reason, Stamp stamp)
    {
        var study = view.Study;
        Refusal? problem = !study.Pieces.Contains(cell.Piece) ? Refusal.Invalid("part", $"the study has the pieces {string.Join(", ", study.Pieces)}")
            : !study.People.Contains(cell.Person) ? Refusal.Invalid("person", $"the study has the people {string.Join(", ", study.People)}")
            : cell.Trial < 1 || cell.Trial > study.Repeats ? Refusal.Invalid("trial", $"the study has the repeats 1 to {study.Repeats}")
            : number.IsGreaterThan ? Refusal.Invalid("value", "a study takes measured values, not bounds")
            : instrument is not null && instrument.Kind != study.InstrumentKind ? Refusal.Invalid("instrument", $"{instrument.Code} is a {instrument.Kind}; the study asks for a {study.InstrumentKind}")
            : view.Counting.TryGetValue(cell, out var earlier) && string.IsNullOrWhiteSpace(reason)
                ? Refusal.Conflict($"{cell.Piece} by {cell.Person}, {cell.Trial}, was read as {earlier.Digits}; to replace it say why in 'reason'. Nothing was recorded.")
            : null;
        if (problem is not null)
        {
            return problem;
        }

        var reading = new MeasurementStudyReading(
            stamp.NewId(), study.Id, cell.Piece, cell.Person, cell.Trial, number.Value, number.Digits, instrument?.Id, string.IsNullOrWhiteSpace(reason) ? null : reason.Trim(),
            stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        return Decision.Accept(reading, reading);
    }

    private static Refusal? Problem(string field, string[] names, int most) =>
        names.Length < 2 || names.Length > most ? Refusal.Invalid(field, $"a study has 2 to {most} of them")
        : names.Any(string.IsNullOrWhiteSpace) || names.Any(n => n.Length > 60) ? Refusal.Invalid(field, "each has a name of at most 60 characters")
        : names.Distinct(StringComparer.Ordinal).Count() < names.Length ? Refusal.Invalid(field, "each is named once")
        : null;
}
