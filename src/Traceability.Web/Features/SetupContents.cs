using Traceability.Persistence.Queries;
using Traceability.Web.Features.Setup.Instruments;
using Traceability.Web.Features.Setup.InstrumentTokens;
using Traceability.Web.Features.Setup.Lots;
using Traceability.Web.Features.Setup.Overview;
using Traceability.Web.Features.Setup.People;
using Traceability.Web.Features.Setup.Routes;
using Traceability.Web.Features.Setup.Stations;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features;

/// <summary>People, stations, instruments, lots and routes.</summary>
public static class SetupContents
{
    public static readonly Contents All = new Contents()
        .With<MakeFirstAccount>()
        .With<AddPerson>()
        .With<ChangePerson>()
        .With<GivePinCode>()
        .With<AddStation>()
        .With<AddInstrument>()
        .With<ProveInstrument>()
        .With<IssueToken>()
        .With<LoadRoute>()
        .With<RouteRevisions>()
        .With<CompareRevisions>()
        .With<ApproveRevision>()
        .With<ReceiveLot>()
        .With<DecideLot>()
        .With<ReadLots>()
        .With<ListPeople>()
        .With<ReadRoutes>()
        .With<ListInstruments>()
        .Needing<SetupCounts>()
        .Needing<LastOfRole>()
        .Needing<KnownKindsQuery>()
        .Needing<RouteStandingQuery>()
        .Needing<KindsOfRoutes>()
        .Needing<FilmLotRoute>()
        .Needing<TallySample>();
}
