using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>The decisions that held what a trace found, with what lifting each of them would touch.</summary>
public sealed class ListTracedHolds(TraceSubjects subjects, TracedHoldReader holds) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/quality/trace/holds", HandleAsync)
            .For(Role.Quality)
            .Is(Subjects.Tracing, "listTracedHolds", "The decisions that held what a trace found, with what lifting each would touch.");

    /// <param name="what" example="lot">What was traced: lot, supplier-lot, instrument, carrier, load, station or person.</param>
    /// <param name="code" example="F-2603">Its number, code, id or badge.</param>
    public static async Task<Results<JsonOrCsv<Page<TracedHold>>, Problem>> HandleAsync(
        string what,
        string code,
        HttpContext http,
        PageRequest page,
        ListTracedHolds use,
        CancellationToken cancellation
    )
    {
        var (items, refusal) = await use.RunAsync(what, code, cancellation);
        return items is null ? ProblemAnswers.From(refusal!) : JsonOrCsv.Of(page.Part(items, h => h.Id.ToString()));
    }

    /// <summary>The decisions that came of the trace of something named, or why it cannot be traced.</summary>
    public async Task<(IReadOnlyList<TracedHold>? Items, Refusal? Refusal)> RunAsync(
        string what,
        string code,
        CancellationToken cancellation
    )
    {
        if (TraceKinds.FromCode(what) is not { } kind)
        {
            return (null, Refusal.Invalid("what", QualitySentences.WhatIsOneOf(string.Join(", ", TraceKinds.Codes))));
        }

        var found = await subjects.FindAsync(new(kind, code), cancellation);
        return found.Subject is { } subject ? (await holds.OfAsync(subject.Kind, subject.Code, cancellation), null) : (null, found.Refusal);
    }
}
