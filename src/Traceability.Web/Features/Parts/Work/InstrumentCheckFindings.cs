using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Tracing;
using Traceability.Domain.Values;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>
/// What the checks of instruments after an attempt mean for it: still due, missed, or failed, so that its readings are in doubt.
/// </summary>
public sealed class InstrumentCheckFindings(InstrumentQuery instruments, WorkshopCalendar calendar, Writes writes)
{
    /// <summary>The findings of each attempt; nothing is read for stages that ask for no check on the day.</summary>
    public async Task<IReadOnlyDictionary<Guid, IReadOnlyList<string>>> OfAsync(
        Dossier dossier,
        IReadOnlyList<AttemptView> attempts,
        CancellationToken cancellation
    )
    {
        var codes = attempts
            .Where(a => dossier.Route.Find(a.Stage) is { CheckedToday: true })
            .SelectMany(a => a.Instruments)
            .Select(u => u.InstrumentCode)
            .Distinct()
            .ToList();
        var standings = await instruments.FindAsync(codes, cancellation);
        return attempts.ToDictionary(a => a.Id, a => ProofAfter.Of(a, dossier.Route.Find(a.Stage), standings, writes.Now, calendar));
    }
}
