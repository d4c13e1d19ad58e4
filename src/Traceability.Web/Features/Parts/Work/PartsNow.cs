using Traceability.Domain.Gates;
using Traceability.Domain.Values;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>What the parts of a list are at this moment, all in one question.</summary>
public sealed class PartsNow(StandingQuery query, WorkshopCalendar calendar, TimeProvider clock)
{
    /// <summary>The parts with these ids.</summary>
    public Task<IReadOnlyDictionary<Guid, PartNow>> OfAsync(IEnumerable<Guid> ids, CancellationToken cancellation) =>
        query.OfAsync([.. ids.Distinct()], new GateContext(clock.GetUtcNow(), calendar), cancellation);
}
