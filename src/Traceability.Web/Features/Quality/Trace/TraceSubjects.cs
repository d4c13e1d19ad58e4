using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Quality.Tracing;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>Finds what is in doubt: the lots, instrument, carrier, load, station or person that a trace starts from.</summary>
public sealed class TraceSubjects(WorkshopContext db, InstrumentQuery instruments, WorkshopCalendar calendar)
{
    /// <summary>Finds what is in doubt; an instrument without a given period brings its own.</summary>
    public async Task<TraceFinding> FindAsync(TraceQuestion ask, CancellationToken cancellation)
    {
        var code = ask.Code.Trim();
        if (code.Length == 0 || ask.From > ask.To)
        {
            return Refusal.Invalid(
                code.Length == 0 ? "code" : "to",
                code.Length == 0 ? QualitySentences.SayWhatToTrace : QualitySentences.PeriodEndsBeforeItBegins
            );
        }

        var subject = new TraceSubject(
            ask.What,
            code.ToUpperInvariant(),
            [],
            [],
            ask.From ?? TraceQuery.Beginning,
            ask.To ?? TraceQuery.End
        );
        return ask.What switch
        {
            TraceKind.Lot => await LotsAsync(subject, l => l.Number == subject.Code, cancellation),
            TraceKind.SupplierLot => await LotsAsync(subject with { Code = code }, l => l.SupplierLot == code, cancellation),
            TraceKind.Instrument => await InstrumentAsync(subject, ask, cancellation),
            TraceKind.Carrier => Coded(
                subject,
                await db.Set<CarrierPlacement>().AnyAsync(p => p.CarrierCode == subject.Code, cancellation),
                QualitySentences.NoPartWasEverInACarrier
            ),
            TraceKind.Station => Coded(
                subject,
                await db.Kept<Domain.Records.Station>().AnyAsync(s => s.Code == subject.Code, cancellation),
                QualitySentences.ThereIsNoStation
            ),
            TraceKind.Load => Guid.TryParse(code, out var id) && await db.Set<Load>().AnyAsync(l => l.Id == id, cancellation)
                ? new TraceFinding(subject with { Ids = [id], Code = id.ToString() }, null, [], null)
                : Refusal.NotFound(QualitySentences.ThereIsNoLoad(code)),
            _ => await db.Set<Person>().Where(p => p.Badge == subject.Code).Select(p => (Guid?)p.Id).FirstOrDefaultAsync(cancellation)
                is { } person
                ? new TraceFinding(subject with { Ids = [person] }, null, [], null)
                : Refusal.NotFound(QualitySentences.NobodyHasTheBadge(code)),
        };
    }

    private static TraceFinding Coded(TraceSubject subject, bool exists, string unknown) =>
        exists
            ? new TraceFinding(subject with { Codes = [subject.Code] }, null, [], null)
            : Refusal.NotFound($"{unknown} '{subject.Code}'");

    private async Task<TraceFinding> LotsAsync(
        TraceSubject subject,
        System.Linq.Expressions.Expression<Func<Lot, bool>> which,
        CancellationToken cancellation
    )
    {
        var lots = await db.Kept<Lot>().Where(which).OrderBy(l => l.Number).Select(l => new { l.Id, l.Number }).ToListAsync(cancellation);
        return lots.Count == 0
            ? Refusal.NotFound(
                subject.Kind == TraceKind.Lot
                    ? QualitySentences.ThereIsNoLot(subject.Code)
                    : QualitySentences.NoLotHereIsCalled(subject.Code)
            )
            : new TraceFinding(
                subject with
                {
                    Ids = [.. lots.Select(l => l.Id)],
                    From = TraceQuery.Beginning,
                    To = TraceQuery.End,
                },
                null,
                [.. lots.Select(l => l.Number)],
                null
            );
    }

    private async Task<TraceFinding> InstrumentAsync(TraceSubject subject, TraceQuestion ask, CancellationToken cancellation)
    {
        if (await instruments.FindAsync([subject.Code], cancellation) is not [var instrument])
        {
            return Refusal.NotFound(QualitySentences.ThereIsNoInstrument(subject.Code));
        }

        var doubt = InstrumentDoubt.Of(instrument, calendar);
        var until = ask.From is null ? doubt.Until : null;
        return new TraceFinding(
            subject with
            {
                Ids = [instrument.Instrument.Id],
                From = ask.From ?? doubt.Since ?? TraceQuery.Beginning,
                To = ask.To ?? until ?? TraceQuery.End,
            },
            doubt.FoundAt,
            [],
            null
        );
    }
}
