using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>Distinguishes an instrument that sends with its own token from a person.</summary>
public sealed class SendingInstrument(InstrumentQuery instruments)
{
    /// <summary>The instrument that acts; null for people.</summary>
    public async Task<InstrumentStanding?> FindAsync(Actor actor, CancellationToken cancellation) =>
        actor.Is(Role.Instrument)
        && await instruments.FindAsync([actor.Badge], cancellation) is [var found]
        && found.Instrument.Id == actor.PersonId
            ? found
            : null;
}
