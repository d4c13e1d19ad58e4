using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Setup.Lots;
using Traceability.Web.Features.Setup.People;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Features.Setup.Overview;

/// <summary>One step on the way from an empty store to the first scan: where it is taken, and whether the store shows it was.</summary>
/// <param name="Key">Names its words.</param>
/// <param name="Url">Where it is taken.</param>
/// <param name="Done">True when what the next step needs is there.</param>
/// <param name="Number">How many there are, where that says something.</param>
public sealed record SetupStep(string Key, string Url, bool Done, int? Number = null);

/// <summary>
/// The way from an empty store to the first scan. Nothing is ticked off by hand: what the store holds says what is done, so every step can
/// be left and taken up again, in any order, by anybody who may.
/// </summary>
public sealed class FirstHour(WorkshopContext db, WorkshopNotice notice)
{
    /// <summary>The steps in their order.</summary>
    public async Task<IReadOnlyList<SetupStep>> ReadAsync(CancellationToken cancellation)
    {
        var named = (await notice.ReadAsync(cancellation)).Workshop is not null;
        var deactivated = await db.SetAsideAsync(SetupSort.Person, cancellation);
        var people = (await ListPeople.AllAsync(db, cancellation)).Where(p => !deactivated.ContainsKey(p.PersonId)).ToList();
        var stations = await db.Offered<Domain.Records.Station>().CountAsync(cancellation);
        var routes = await db.Set<RouteApproval>().CountAsync(cancellation);
        var instruments = await db.Offered<Instrument>().CountAsync(cancellation);
        var calibrated = await db.Offered<Instrument>()
            .AnyAsync(i => db.Set<Calibration>().Any(c => c.InstrumentId == i.Id && c.Passed), cancellation);
        var lots = await db.Offered<Lot>().CountAsync(cancellation);
        var released = await db.Offered<Lot>()
            .AnyAsync(l => db.Set<LotDecision>().Any(d => d.LotId == l.Id && d.State == LotState.Released), cancellation);
        // Receiving a film lot records its receipt by itself; that is no scan at a bench.
        var worked = await db.Set<Attempt>().AnyAsync(a => a.Station != FilmLotRoute.Office, cancellation);
        return
        [
            new("workshop", "/setup/workshop", named),
            new("people", "/setup/people", CanBuildAndDecide(people), people.Count),
            new("stations", "/setup/stations", stations > 0, stations),
            new("routes", "/setup/routes", routes > 0, routes),
            new("instruments", "/instruments", calibrated, instruments),
            new("lots", "/lots", released, lots),
            new("labels", "/labels", worked),
            new("first-part", "/station", worked),
        ];
    }

    /// <summary>Somebody builds and somebody decides; in a workshop of one it is the same person.</summary>
    private static bool CanBuildAndDecide(IReadOnlyList<Actor> people) =>
        people.Any(p => p.Is(Role.Builder)) && people.Any(p => p.Is(Role.Quality));
}
