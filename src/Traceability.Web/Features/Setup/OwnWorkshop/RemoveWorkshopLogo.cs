using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.OwnWorkshop;

/// <summary>The workshop goes without a logo from now on; certificates of before keep theirs.</summary>
public sealed class RemoveWorkshopLogo : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/workshop/logo/removal", HandleAsync)
            .For(Role.Lead)
            .Is(Subjects.Workshop, "removeWorkshopLogo", "Go without a logo; certificates of before keep theirs.");

    public static Task<Results<Recorded<WorkshopAnswer>, Problem>> HandleAsync(SignedIn signedIn, SetWorkshopLogo use, Writes writes) =>
        writes.RecordAsync(cancellation => use.RemoveAsync(signedIn.Actor, cancellation));
}
