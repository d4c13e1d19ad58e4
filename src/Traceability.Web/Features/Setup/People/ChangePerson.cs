using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Access;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.People;

/// <summary>
/// Gives or takes a role or a qualification. What was before stays in the record. Who loses a role is signed out everywhere.
/// </summary>
public sealed class ChangePerson(WorkshopContext db, Writes writes, LastOfRole last, WorkshopCalendar calendar) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapPost("/people/{badge}/roles", SetRoleAsync).For(Role.Lead).Is(Subjects.People, "setRole", "Give or take a role.");
        api.MapPost("/people/{badge}/qualifications", SetQualificationAsync)
            .For(Role.Lead)
            .Is(Subjects.People, "setQualification", "Give or take a qualification.");
    }

    public sealed record RoleInput(Role Role, bool Given);

    public sealed record QualificationInput(string Code, bool Given, DateOnly? ValidUntil = null);

    public static Task<Results<Changed<PersonAnswer>, Problem>> SetRoleAsync(
        string badge,
        RoleInput input,
        SignedIn signedIn,
        ChangePerson use,
        Writes writes
    ) => writes.ChangeAsync(c => use.ChangeRoleAsync(badge, input, signedIn.Actor.PersonId, c));

    public static Task<Results<Changed<PersonAnswer>, Problem>> SetQualificationAsync(
        string badge,
        QualificationInput input,
        SignedIn signedIn,
        ChangePerson use,
        Writes writes
    ) => writes.ChangeAsync(c => use.ChangeQualificationAsync(badge, input, signedIn.Actor.PersonId, c));

    public Task<Answer<PersonAnswer>> ChangeRoleAsync(string badge, RoleInput input, Guid by, CancellationToken cancellation) =>
        RunAsync(
            badge,
            "change-role",
            (id, s) => new RoleGrant(s.NewId(), id, input.Role, input.Given, s.By, s.OccurredAt, s.RecordedAt),
            by,
            cancellation,
            input.Given ? null : input.Role
        );

    public Task<Answer<PersonAnswer>> ChangeQualificationAsync(
        string badge,
        QualificationInput input,
        Guid by,
        CancellationToken cancellation
    ) =>
        string.IsNullOrWhiteSpace(input.Code) || input.Code.Length > 40
            ? Task.FromResult<Answer<PersonAnswer>>(Refusal.Invalid("code", SetupSentences.QualificationHasToCharacters))
            : RunAsync(
                badge,
                "change-qualification",
                (id, s) =>
                    new QualificationGrant(s.NewId(), id, input.Code, input.Given, input.ValidUntil, s.By, s.OccurredAt, s.RecordedAt),
                by,
                cancellation
            );

    /// <summary>Appends one fact about the person.</summary>
    private async Task<Answer<PersonAnswer>> RunAsync(
        string badge,
        string command,
        Func<Guid, Stamp, Fact> fact,
        Guid by,
        CancellationToken cancellation,
        Role? taken = null
    )
    {
        var code = badge.Trim().ToUpperInvariant();
        var person = await db.Set<Person>().AsNoTracking().FirstOrDefaultAsync(p => p.Badge == code, cancellation);
        if (person is null)
        {
            return Refusal.NotFound(SetupSentences.NobodyHasTheBadge(badge));
        }

        if (taken is { } role && await last.HoldsAsync(person, role, cancellation))
        {
            if (await last.ProblemAsync(person, role, cancellation) is { } refusal)
            {
                return refusal;
            }

            await PersonSessions.EndAsync(db, person.Id, cancellation);
        }

        var added = fact(person.Id, writes.Stamp(by));
        await writes.Book.AppendAsync(person.Id, command, [added], cancellation);
        await db.SaveChangesAsync(cancellation);
        return Answer.Ok(PersonAnswer.Of((await ActorQuery.FindAsync(db, person.Id, cancellation))!, calendar.DayOf(writes.Now)));
    }
}
