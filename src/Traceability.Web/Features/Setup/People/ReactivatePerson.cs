using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.People;

/// <summary>Gives a person who was deactivated the access back, with roles, qualifications and PIN as before.</summary>
public sealed class ReactivatePerson : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/people/{badge}/reactivation", HandleAsync)
            .For(Role.Lead)
            .Is(Subjects.People, "reactivatePerson", "Give a person the access back.");

    /// <summary>Why.</summary>
    /// <param name="Reason" example="came back">Why, at most 400 characters.</param>
    public sealed record Input(string Reason);

    /// <param name="badge" example="BUILD1">The person's badge.</param>
    public static Task<Results<Changed<PersonAnswer>, Problem>> HandleAsync(
        string badge,
        Input input,
        SignedIn signedIn,
        PersonActivity use,
        Writes writes
    ) => writes.ChangeAsync(c => use.RunAsync(badge, SetupState.InUse, input.Reason, signedIn.Actor, c));
}
