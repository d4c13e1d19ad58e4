using Traceability.Persistence.Queries;
using Traceability.Web.Features.Service.Returns;
using Traceability.Web.Features.Service.Search;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features;

/// <summary>What the service desk needs: the look-up box and returns.</summary>
public static class ServiceContents
{
    public static readonly Contents All = new Contents()
        .With<LookUp>()
        .With<OpenReturn>()
        .With<RecordFinding>()
        .With<RecordOutcome>()
        .With<CloseReturn>()
        .With<ListReturns>()
        .With<ReadReturn>()
        .Needing<ReturnDesk>()
        .Needing<ReturnRows>()
        .Needing<SearchQuery>();
}
