using Traceability.Persistence.Queries;
using Traceability.Web.Features.Setup.Carriers;
using Traceability.Web.Features.Setup.Imports;
using Traceability.Web.Features.Setup.Instruments;
using Traceability.Web.Features.Setup.InstrumentTokens;
using Traceability.Web.Features.Setup.Kinds;
using Traceability.Web.Features.Setup.Lots;
using Traceability.Web.Features.Setup.Operating;
using Traceability.Web.Features.Setup.Overview;
using Traceability.Web.Features.Setup.OwnWorkshop;
using Traceability.Web.Features.Setup.People;
using Traceability.Web.Features.Setup.Routes;
using Traceability.Web.Features.Setup.Routes.Drafts;
using Traceability.Web.Features.Setup.Routes.Examples;
using Traceability.Web.Features.Setup.Routes.Methods;
using Traceability.Web.Features.Setup.Stations;
using Traceability.Web.Features.Setup.TakingBack;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features;

/// <summary>People, stations, instruments, lots and routes.</summary>
public static class SetupContents
{
    public static readonly Contents All = new Contents()
        .With<MakeFirstAccount>()
        .With<ReadWorkshop>()
        .With<ReviseWorkshop>()
        .With<ListWorkshopRevisions>()
        .With<SetWorkshopLogo>()
        .With<RemoveWorkshopLogo>()
        .With<ReadWorkshopLogo>()
        .With<AddPerson>()
        .With<SetRole>()
        .With<SetQualification>()
        .With<DeactivatePerson>()
        .With<ReactivatePerson>()
        .Needing<PersonActivity>()
        .Needing<PersonChange>()
        .With<GivePinCode>()
        .With<ListStations>()
        .With<AddStation>()
        .With<AddInstrument>()
        .With<RecordCalibration>()
        .With<RecordCheck>()
        .With<CorrectCalibration>()
        .With<CorrectCheck>()
        .Needing<InstrumentPast>()
        .Needing<InstrumentProof>()
        .With<ListTokens>()
        .With<IssueToken>()
        .With<RevokeToken>()
        .With<LoadRoute>()
        .With<ListRevisions>()
        .With<CompareRevisions>()
        .With<ApproveRevision>()
        .With<RejectRevision>()
        .With<WithdrawRevision>()
        .Needing<RouteProposals>()
        .With<ListKinds>()
        .With<AddKind>()
        .Needing<KindDoor>()
        .Needing<KindDependents>()
        .Needing<KindsQuery>()
        .Needing<SharedPrefix>()
        .With<ListCarriers>()
        .Needing<CarrierRow>()
        .With<Retire>()
        .With<TakeBack>()
        .With<Reinstate>()
        .With<CorrectName>()
        .Needing<SetupHistory>()
        .Needing<SetupDecisions>()
        .Needing<FindThing>()
        .Needing<WhatDepends>()
        .With<ReceiveLot>()
        .With<ReleaseLot>()
        .With<QuarantineLot>()
        .Needing<LotDecisions>()
        .With<ListLots>()
        .With<ReadLot>()
        .With<ListPeople>()
        .With<ListRoutes>()
        .With<ReadRoute>()
        .With<ListInstruments>()
        .Needing<FirstHour>()
        .With<ListMethods>()
        .Needing<StartFromExample>()
        .Needing<DraftChoices>()
        .Needing<DraftOffers>()
        .Needing<LatestDraft>()
        .Needing<LastValuesQuery>()
        .Needing<TryLimits>()
        .Needing<LastOfRole>()
        .Needing<KnownKindsQuery>()
        .Needing<RouteStandingQuery>()
        .Needing<KindsOfRoutes>()
        .Needing<FilmLotRoute>()
        .Needing<TallySample>()
        .Needing<RunningStore>()
        .With<AddCarrier>()
        .With<ImportRecords>()
        .Needing<ImportPeople>()
        .Needing<ImportStations>()
        .Needing<ImportInstruments>()
        .Needing<ImportLots>()
        .Needing<ImportCarriers>();
}
