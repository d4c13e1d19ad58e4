using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.TakingBack;

/// <summary>Takes what was retired or taken back into use again.</summary>
public sealed class Reinstate : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost(SetupThing.Address + "/reinstatement", HandleAsync)
            .For(Role.Lead, Role.Quality)
            .Is(Subjects.SetUp, "reinstate", "Take what was retired or taken back into use again.");

    /// <param name="sort" example="stations">What it is: stations, instruments, lots, carriers, kinds or models.</param>
    /// <param name="code" example="BENCH-2">Its code; of a lot its number, of a model its name.</param>
    public static Task<Results<Changed<SetupThingAnswer>, Problem>> HandleAsync(
        string sort,
        string code,
        SetupDecisionInput input,
        SignedIn signedIn,
        SetupDecisions use,
        Writes writes
    ) => writes.ChangeAsync(c => use.RunAsync(SetupThing.Sorts[sort], code, input, SetupState.InUse, signedIn.Actor, c));
}
