using Traceability.Persistence.Queries;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.OwnWorkshop;

/// <summary>What holds of the workshop now: its page, and what was set over it at the start.</summary>
public sealed class ReadWorkshop(WorkshopNotice notice, NameQuery names) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/workshop", HandleAsync).Is(Subjects.Workshop, "readWorkshop", "What the workshop says about itself.");

    public static async Task<Microsoft.AspNetCore.Http.HttpResults.Ok<WorkshopAnswer>> HandleAsync(
        ReadWorkshop use,
        CancellationToken cancellation
    ) => TypedResults.Ok(await use.RunAsync(cancellation));

    public async Task<WorkshopAnswer> RunAsync(CancellationToken cancellation)
    {
        var facts = await notice.ReadNowAsync(cancellation);
        var by = facts.Revision is { } r ? (await names.PeopleAsync([r.By], cancellation)).GetValueOrDefault(r.By, Who.Nobody) : null;
        return WorkshopAnswer.Of(facts, by);
    }
}
