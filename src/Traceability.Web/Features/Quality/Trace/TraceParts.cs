using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>
/// The exact list of parts and units that something in doubt has touched: a lot, what a supplier calls one lot, an instrument since its
/// last good proof, a carrier, a load, a station or a person in a period. Where each is, now or at a moment.
/// </summary>
public sealed class TraceParts(TraceQuery query, TracedStandings standings, TraceSubjects subjects) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/quality/trace", HandleAsync)
            .For(Role.Quality, Role.Service)
            .Is(
                Subjects.Tracing,
                "traceParts",
                "Every part and unit that a lot, supplier lot, instrument, carrier, load, station or person touched, and where each is."
            );

    /// <summary>Everything that the thing in doubt has touched.</summary>
    /// <param name="What" example="lot">What was traced: lot, supplier-lot, instrument, carrier, load, station or person.</param>
    /// <param name="Code" example="F-2603">Its code.</param>
    /// <param name="From" example="2026-09-21T00:00:00Z">Beginning of the work in doubt; null for the beginning of records.</param>
    /// <param name="To" example="2026-11-13T16:00:00Z">End of the work in doubt; null for now.</param>
    /// <param name="At" example="2026-11-13T16:00:00Z">The moment whose list this is; null for now.</param>
    /// <param name="FoundAt" example="2026-11-13T16:00:00Z">When an instrument was found wrong; null for anything else.</param>
    /// <param name="Lots">The lots traced, for a lot or a supplier's lot.</param>
    /// <param name="Items">The parts, in the order of their making.</param>
    /// <param name="Next" example="Mzc">Cursor of the next page; null at the end.</param>
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

    /// <param name="what" example="lot">What is traced: lot, supplier-lot, instrument, carrier, load, station or person.</param>
    /// <param name="code" example="F-2603">Its number, code, id or badge.</param>
    /// <param name="from" example="2026-09-21T00:00:00Z">Beginning of the work in doubt; not for lots.</param>
    /// <param name="to" example="2026-11-13T16:00:00Z">End of the work in doubt; not for lots.</param>
    /// <param name="at" example="2026-11-13T16:00:00Z">The list as it was then; as it is now when it is left out.</param>
    public static async Task<Results<JsonOrCsv<Output>, Problem>> HandleAsync(
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
            ? Answer(await use.RunAsync(new(kind, code, from, to, at), page, cancellation))
            : ProblemAnswers.From(Refusal.Invalid("what", QualitySentences.WhatIsOneOf(string.Join(", ", TraceKinds.Codes))));

    /// <summary>What a trace found as a table, or why there is none.</summary>
    public static Results<JsonOrCsv<Output>, Problem> Answer((Output? Found, Refusal? Refusal) traced) =>
        traced is { Found: { } found } ? JsonOrCsv.Of(found, found.Items, found.Next) : ProblemAnswers.From(traced.Refusal!);

    /// <summary>The parts in the order of their making.</summary>
    public async Task<(Output? Found, Refusal? Refusal)> RunAsync(TraceQuestion ask, PageRequest page, CancellationToken cancellation)
    {
        ask = ask with { From = ask.From?.ToUniversalTime(), To = ask.To?.ToUniversalTime(), At = ask.At?.ToUniversalTime() };
        var found = await subjects.FindAsync(ask, cancellation);
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

    private static DateTimeOffset? Bound(DateTimeOffset moment) =>
        moment == TraceQuery.Beginning || moment == TraceQuery.End ? null : moment;
}
