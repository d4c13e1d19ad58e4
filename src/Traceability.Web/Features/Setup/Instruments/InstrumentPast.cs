using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Quality.Holds;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Features.Setup.Instruments;

/// <summary>Everything that was recorded about an instrument, newest first: what counts, and what a correction took the place of.</summary>
public sealed class InstrumentPast(WorkshopContext db, ListHolds holds, NameQuery names, IStringLocalizer<DeskTexts> texts)
{
    /// <summary>Something that was recorded about the instrument.</summary>
    /// <param name="Id">The calibration or check that can be corrected; null when it was, or cannot be.</param>
    /// <param name="At">When it happened.</param>
    /// <param name="Sort">What it is, in words.</param>
    /// <param name="State">The word of what came of it.</param>
    /// <param name="Words">What it says.</param>
    /// <param name="Note">What else was noted, or why it was corrected.</param>
    /// <param name="By">Who recorded it.</param>
    public sealed record Line(Guid? Id, DateTimeOffset At, string Sort, string State, string Words, string? Note, string By);

    public async Task<IReadOnlyList<Line>> RunAsync(InstrumentStanding i, CancellationToken cancellation)
    {
        var id = i.Instrument.Id;
        var calibrations = await db.Set<Calibration>().AsNoTracking().Where(c => c.InstrumentId == id).ToListAsync(cancellation);
        var checks = await db.Set<InstrumentCheck>().AsNoTracking().Where(c => c.InstrumentId == id).ToListAsync(cancellation);
        var people = await names.PeopleAsync([.. calibrations.Select(c => c.By), .. checks.Select(c => c.By)], cancellation);
        string Name(Guid by) => people.GetValueOrDefault(by, Who.Nobody).Name;
        IEnumerable<Line> lines =
        [
            .. calibrations.Select(c =>
                LineOf(
                    c,
                    c.Passed,
                    texts["Instrument.Calibration"],
                    WordsOf(c),
                    (c.Note, c.ReplacesBecause),
                    calibrations.Exists(n => n.Replaces == c.Id),
                    Name
                )
            ),
            .. checks.Select(c =>
                LineOf(
                    c,
                    c.Passed,
                    texts["Instrument.Check"],
                    WordsOf(c, i.Instrument),
                    (c.Note, c.ReplacesBecause),
                    checks.Exists(n => n.Replaces == c.Id),
                    Name
                )
            ),
            .. (await holds.OfSubjectAsync(id, cancellation)).Select(h => new Line(
                null,
                h.HeldAt,
                texts["Instrument.Hold"],
                h.Open ? "held" : "free",
                h.Reason,
                h.ReleaseReason,
                h.HeldBy.Name
            )),
        ];
        return [.. lines.OrderByDescending(l => l.At)];
    }

    private Line LineOf(
        Fact fact,
        bool passed,
        string sort,
        string words,
        (string? Note, string? Because) said,
        bool isCorrected,
        Func<Guid, string> name
    ) =>
        new(
            isCorrected ? null : fact.Id,
            fact.OccurredAt,
            sort,
            isCorrected ? "superseded"
                : passed ? "pass"
                : "fail",
            words,
            said.Because is null ? said.Note : $"{texts["Instrument.CorrectedBecause", said.Because]} {said.Note}".TrimEnd(),
            name(fact.By)
        );

    /// <summary>What a calibration says, in one line.</summary>
    public string WordsOf(Calibration c) =>
        texts["Instrument.CalibrationWords", WorkshopCalendar.Say(c.CalibratedOn), WorkshopCalendar.Say(c.DueOn), c.Reference]
        + (
            c.Constants is null
                ? ""
                : "; " + string.Join(", ", c.Constants.Select(x => FormattableString.Invariant($"{texts["Constant." + x.Key]} {x.Value}")))
        );

    private static string WordsOf(InstrumentCheck c, Instrument i) =>
        c.Value is null ? "" : FormattableString.Invariant($"{c.Value} {Display.Symbol(i.CheckUnit)}");
}
