using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.People;

/// <summary>Ends a person's access; what the person did stays in the record.</summary>
public sealed class DeactivatePerson : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/people/{badge}/deactivation", HandleAsync)
            .For(Role.Lead)
            .Is(Subjects.People, "deactivatePerson", "End a person's access: sessions end, and the person signs in no more.");

    /// <summary>Why.</summary>
    /// <param name="Reason" example="left the workshop">Why, at most 400 characters.</param>
    public sealed record Input(string Reason);

    /// <param name="badge" example="BUILD1">The person's badge.</param>
    public static Task<Results<Changed<PersonAnswer>, Problem>> HandleAsync(
        string badge,
        Input input,
        SignedIn signedIn,
        PersonActivity use,
        Writes writes
    ) => writes.ChangeAsync(c => use.RunAsync(badge, SetupState.Retired, input.Reason, signedIn.Actor, c));
}
