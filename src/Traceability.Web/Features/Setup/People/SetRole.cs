using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Persistence.Book;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.People;

/// <summary>Gives or takes a role.</summary>
public sealed class SetRole(PersonChange change) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/people/{badge}/roles", HandleAsync).For(Role.Lead).Is(Subjects.People, "setRole", "Give or take a role.");

    /// <summary>A role given or taken.</summary>
    /// <param name="Role" example="builder">The role.</param>
    /// <param name="Given" example="true">True to give it, false to take it.</param>
    public sealed record Input(Role Role, bool Given);

    /// <param name="badge" example="BUILD1">The person's badge.</param>
    public static Task<Results<Changed<PersonAnswer>, Problem>> HandleAsync(
        string badge,
        Input input,
        SignedIn signedIn,
        SetRole use,
        Writes writes
    ) => writes.ChangeAsync(c => use.RunAsync(badge, input, signedIn.Actor.PersonId, c));

    public Task<Answer<PersonAnswer>> RunAsync(string badge, Input input, Guid by, CancellationToken cancellation) =>
        change.RunAsync(
            badge,
            "change-role",
            (id, s) => new RoleGrant(s.NewId(), id, input.Role, input.Given, s.By, s.OccurredAt, s.RecordedAt),
            by,
            cancellation,
            input.Given ? null : input.Role
        );
}
