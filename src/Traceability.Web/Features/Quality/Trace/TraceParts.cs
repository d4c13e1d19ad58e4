using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Quality.Tracing;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>
/// The exact list of parts and units that something in doubt has touched: a lot, what a supplier calls one lot, an instrument since its
/// last good proof, a carrier, a load, a station or a person in a period. Where each is, now or at a moment.
/// </summary>
public sealed class TraceParts(
    WorkshopContext db,
    TraceQuery query,
    TracedStandings standings,
    InstrumentQuery instruments,
    WorkshopCalendar calendar
) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/instruments/{code}/affected", AffectedAsync)
            .For(Role.Quality, Role.Service)
            .Is(
                Subjects.Instruments,
                "listAffected",
                "Every part and unit measured with the instrument since its last good calibration or check."
            );
        api.MapGet("/quality/trace", HandleAsync)
            .For(Role.Quality, Role.Service)
            .Is(
                Subjects.Tracing,
                "traceParts",
                "Every part and unit that a lot, supplier lot, instrument, carrier, load, station or person touched, and where each is."
            );
    }

    /// <summary>What is asked. <c>From</c> and <c>To</c> bound the work in doubt; <c>At</c> asks how it was then.</summary>
    public sealed record Ask(
        TraceKind What,
        string Code,
        DateTimeOffset? From = null,
        DateTimeOffset? To = null,
        DateTimeOffset? At = null
    );

    public sealed record Output(
        string What,
        string Code,
        DateTimeOffset? From,
        DateTimeOffset? To,
        DateTimeOffset? At,
        DateTimeOffset? FoundAt,
        IReadOnlyList<string> Lots,
        IReadOnlyList<TracedPart> Items,
        string? Next
    );

    /// <summary>What was found, or why it cannot be asked.</summary>
    public sealed record Finding(TraceSubject? Subject, DateTimeOffset? FoundAt, IReadOnlyList<string> Lots, Refusal? Refusal)
    {
        public static implicit operator Finding(Refusal refusal) => new(null, null, [], refusal);
    }

    public static async Task<Results<Table<Output>, Problem>> HandleAsync(
        string what,
        string code,
        HttpContext http,
        PageRequest page,
        TraceParts use,
        CancellationToken cancellation,
        DateTimeOffset? from = null,
        DateTimeOffset? to = null,
        DateTimeOffset? at = null
    ) =>
        TraceKinds.FromCode(what) is { } kind
            ? await AnswerAsync(new(kind, code, from, to, at), http, page, use, cancellation)
            : ProblemAnswers.From(Refusal.Invalid("what", QualitySentences.WhatIsOneOf(string.Join(", ", TraceKinds.Codes))));

    /// <summary>Everything measured with an instrument since its last good calibration or check, or since a time that is given.</summary>
    public static Task<Results<Table<Output>, Problem>> AffectedAsync(
        string code,
        HttpContext http,
        PageRequest page,
        TraceParts use,
        CancellationToken cancellation,
        DateTimeOffset? since = null,
        DateTimeOffset? at = null
    ) => AnswerAsync(new(TraceKind.Instrument, code, since, null, at), http, page, use, cancellation);

    private static async Task<Results<Table<Output>, Problem>> AnswerAsync(
        Ask ask,
        HttpContext http,
        PageRequest page,
        TraceParts use,
        CancellationToken cancellation
    )
    {
        var (found, refusal) = await use.RunAsync(ask, page, cancellation);
        return refusal is not null ? ProblemAnswers.From(refusal) : Csv.Answer(found!, found!.Items, found.Next);
    }

    /// <summary>The parts in the order of their making.</summary>
    public async Task<(Output? Found, Refusal? Refusal)> RunAsync(Ask ask, PageRequest page, CancellationToken cancellation)
    {
        ask = ask with { From = ask.From?.ToUniversalTime(), To = ask.To?.ToUniversalTime(), At = ask.At?.ToUniversalTime() };
        var found = await FindAsync(ask, cancellation);
        if (found.Subject is not { } subject)
        {
            return (null, found.Refusal);
        }

        var rows = page.Cut(
            await query.RunAsync(subject, ask.At ?? TraceQuery.End, page.AfterId, page.Limit + 1, cancellation),
            r => r.PartId.ToString()
        );
        return (
            new(
                subject.Kind.Code(),
                subject.Code,
                Bound(subject.From),
                Bound(subject.To),
                ask.At,
                found.FoundAt,
                found.Lots,
                await standings.DescribeAsync(rows.Items, ask.At, cancellation),
                rows.Next
            ),
            null
        );
    }

    /// <summary>Finds what is in doubt; an instrument without a given period brings its own.</summary>
    public async Task<Finding> FindAsync(Ask ask, CancellationToken cancellation)
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
                await db.Set<Domain.Records.Station>().AnyAsync(s => s.Code == subject.Code, cancellation),
                QualitySentences.ThereIsNoStation
            ),
            TraceKind.Load => Guid.TryParse(code, out var id) && await db.Set<Load>().AnyAsync(l => l.Id == id, cancellation)
                ? new Finding(subject with { Ids = [id], Code = id.ToString() }, null, [], null)
                : Refusal.NotFound(QualitySentences.ThereIsNoLoad(code)),
            _ => await db.Set<Person>().Where(p => p.Badge == subject.Code).Select(p => (Guid?)p.Id).FirstOrDefaultAsync(cancellation)
                is { } person
                ? new Finding(subject with { Ids = [person] }, null, [], null)
                : Refusal.NotFound(QualitySentences.NobodyHasTheBadge(code)),
        };
    }

    private static Finding Coded(TraceSubject subject, bool exists, string unknown) =>
        exists ? new Finding(subject with { Codes = [subject.Code] }, null, [], null) : Refusal.NotFound($"{unknown} '{subject.Code}'");

    private async Task<Finding> LotsAsync(
        TraceSubject subject,
        System.Linq.Expressions.Expression<Func<Lot, bool>> which,
        CancellationToken cancellation
    )
    {
        var lots = await db.Set<Lot>().Where(which).OrderBy(l => l.Number).Select(l => new { l.Id, l.Number }).ToListAsync(cancellation);
        return lots.Count == 0
            ? Refusal.NotFound(
                subject.Kind == TraceKind.Lot
                    ? QualitySentences.ThereIsNoLot(subject.Code)
                    : QualitySentences.NoLotHereIsCalled(subject.Code)
            )
            : new Finding(
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

    private async Task<Finding> InstrumentAsync(TraceSubject subject, Ask ask, CancellationToken cancellation)
    {
        if (await instruments.FindAsync([subject.Code], cancellation) is not [var instrument])
        {
            return Refusal.NotFound(QualitySentences.ThereIsNoInstrument(subject.Code));
        }

        var doubt = InstrumentDoubt.Of(instrument, calendar);
        var until = ask.From is null ? doubt.Until : null;
        return new Finding(
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

    private static DateTimeOffset? Bound(DateTimeOffset moment) =>
        moment == TraceQuery.Beginning || moment == TraceQuery.End ? null : moment;
}
