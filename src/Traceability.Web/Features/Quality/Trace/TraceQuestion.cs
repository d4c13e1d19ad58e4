using Traceability.Domain.Work.QualityDecisions;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>What is asked. <c>From</c> and <c>To</c> bound the work in doubt; <c>At</c> asks how it was then.</summary>
public sealed record TraceQuestion(
    TraceKind What,
    string Code,
    DateTimeOffset? From = null,
    DateTimeOffset? To = null,
    DateTimeOffset? At = null
);
