using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.History;
using Traceability.Web.Features.Parts.Labels;
using Traceability.Web.Features.Parts.Life;
using Traceability.Web.Features.Parts.Lists;
using Traceability.Web.Features.Parts.Overview;
using Traceability.Web.Features.Parts.Structure;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features;

/// <summary>What all three kinds of people read of a part: how it stands, its life, its structure, its labels.</summary>
public static class PartsContents
{
    public static readonly Contents All = new Contents()
        .With<ListParts>()
        .With<ReadHistory>()
        .With<ReadMadeOf>()
        .With<ReadPart>()
        .With<ReadGates>()
        .Needing<WorkBench>()
        .Needing<GateContexts>()
        .Needing<SlotReader>()
        .Needing<InstrumentCheckFindings>()
        .Needing<StandingQuery>()
        .Needing<PartsNow>()
        .Needing<PartLife>()
        .Needing<EvidenceCharts>()
        .Needing<NameQuery>()
        .Needing<ElsewhereQuery>()
        .Needing<InsideQuery>()
        .Needing<LabelQuery>();
}
