using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.TakingBack;

/// <summary>Retires something of the set-up: it is kept with its past and no longer offered.</summary>
public sealed class Retire : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost(SetupThing.Address + "/retirement", HandleAsync)
            .For(Role.Lead, Role.Quality)
            .Is(Subjects.SetUp, "retire", "Retire a station, instrument, lot, carrier, kind or model: kept, and no longer offered.");

    /// <param name="sort" example="stations">What it is: stations, instruments, lots, carriers, kinds or models.</param>
    /// <param name="code" example="BENCH-2">Its code; of a lot its number, of a model its name.</param>
    public static Task<Results<Changed<SetupThingAnswer>, Problem>> HandleAsync(
        string sort,
        string code,
        SetupDecisionInput input,
        SignedIn signedIn,
        SetupDecisions use,
        Writes writes
    ) => writes.ChangeAsync(c => use.RunAsync(SetupThing.Sorts[sort], code, input, SetupState.Retired, signedIn.Actor, c));
}
