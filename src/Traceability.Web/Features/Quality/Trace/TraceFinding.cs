using Traceability.Domain.Work;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Quality.Trace;

/// <summary>What was found, or why it cannot be asked.</summary>
public sealed record TraceFinding(TraceSubject? Subject, DateTimeOffset? FoundAt, IReadOnlyList<string> Lots, Refusal? Refusal)
{
    public static implicit operator TraceFinding(Refusal refusal) => new(null, null, [], refusal);
}
