using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Quality.Tracing;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
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
            ? Answer(await use.RunAsync(new(kind, code, from, to, at), page, cancellation))
            : ProblemAnswers.From(Refusal.Invalid("what", QualitySentences.WhatIsOneOf(string.Join(", ", TraceKinds.Codes))));

    /// <summary>What a trace found as a table, or why there is none.</summary>
    public static Results<Table<Output>, Problem> Answer((Output? Found, Refusal? Refusal) traced) =>
        traced is { Found: { } found } ? Csv.Answer(found, found.Items, found.Next) : ProblemAnswers.From(traced.Refusal!);

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
