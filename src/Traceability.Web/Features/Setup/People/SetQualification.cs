using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Setup.Kinds;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.People;

/// <summary>Gives or takes a qualification.</summary>
public sealed class SetQualification(PersonChange change, KindDoor kinds) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/people/{badge}/qualifications", HandleAsync)
            .For(Role.Lead)
            .Is(Subjects.People, "setQualification", "Give or take a qualification.");

    /// <summary>A qualification given or taken.</summary>
    /// <param name="Code" example="tensioning">What the person is qualified for, at most 40 characters.</param>
    /// <param name="Given" example="true">True to give it, false to take it.</param>
    /// <param name="ValidUntil" example="2027-12-31">The last day on which it counts; without end, when left out.</param>
    public sealed record Input(string Code, bool Given, DateOnly? ValidUntil = null);

    /// <param name="badge" example="BUILD1">The person's badge.</param>
    public static Task<Results<Changed<PersonAnswer>, Problem>> HandleAsync(
        string badge,
        Input input,
        SignedIn signedIn,
        SetQualification use,
        Writes writes
    ) => writes.ChangeAsync(c => use.RunAsync(badge, input, signedIn.Actor.PersonId, c));

    public async Task<Answer<PersonAnswer>> RunAsync(string badge, Input input, Guid by, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(input.Code) || input.Code.Length > 40)
        {
            return Refusal.Invalid("code", SetupSentences.QualificationHasToCharacters);
        }

        if (input.Given && await kinds.ProblemAsync(KindOf.Qualification, input.Code, cancellation) is { } retired)
        {
            return retired;
        }

        return await change.RunAsync(
            badge,
            "change-qualification",
            (id, s) => new QualificationGrant(s.NewId(), id, input.Code, input.Given, input.ValidUntil, s.By, s.OccurredAt, s.RecordedAt),
            by,
            cancellation
        );
    }
}
