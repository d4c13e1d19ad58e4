using Traceability.Persistence.Queries;
using Traceability.Web.Features.Station.Loads;
using Traceability.Web.Features.Station.Mates;
using Traceability.Web.Features.Station.NewParts;
using Traceability.Web.Features.Station.ScanBox;
using Traceability.Web.Features.Station.StageWork;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features;

/// <summary>What happens at a bench: work at a stage, loads, the scan box, the own bench.</summary>
public static class StationContents
{
    public static readonly Contents All = new Contents()
        .With<RegisterPart>()
        .With<OpenAttempt>()
        .With<TakeReadings>()
        .With<FitInputs>()
        .With<AttachEvidence>()
        .With<CloseAttempt>()
        .With<AbandonAttempt>()
        .With<SignSecondTime>()
        .With<MakeRecord>()
        .With<SendReading>()
        .With<CorrectReading>()
        .With<RemoveFitting>()
        .With<OpenLoad>()
        .With<KeepLoadLog>()
        .With<CloseLoad>()
        .With<FindMates>()
        .With<ReadAttempt>()
        .With<ReadEvidence>()
        .With<ReadLoad>()
        .Needing<SendingInstrument>()
        .Needing<LoadLocks>()
        .Needing<ScreenStates>()
        .Needing<CodeLookup>()
        .Needing<PartAtBenchReader>()
        .Needing<StationSignIn>()
        .Needing<CommandRunner>()
        .Needing<ScanProcessor>()
        .Needing<StationUpload>()
        .Needing<StationViewReader>()
        .Needing<BenchQuery>();
}
