using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Codes;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Access;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.People;

/// <summary>
/// Makes a person known: badge, name, roles and qualifications. The answer holds a code by which the person sets the own PIN, which nobody
/// else knows.
/// </summary>
public sealed class AddPerson(WorkshopContext db, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/people", HandleAsync)
            .For(Role.Lead)
            .Is(Subjects.People, "addPerson", "Add a person; the answer holds, this once, a code by which the person sets the own PIN.");

    /// <summary>A new person.</summary>
    /// <param name="Badge" example="BUILD1">The badge: capital letters, digits and hyphens.</param>
    /// <param name="Name" example="Builder One">The name, at most 120 characters.</param>
    /// <param name="Roles">What the person may do here.</param>
    /// <param name="Qualifications">What the person is qualified for, without end.</param>
    public sealed record Input(string Badge, string Name, IReadOnlyList<Role>? Roles = null, IReadOnlyList<string>? Qualifications = null);

    /// <summary>The person, and the code that is shown this once.</summary>
    /// <param name="Badge" example="BUILD1">The badge, by which the person signs in.</param>
    /// <param name="Name" example="Builder One">The name.</param>
    /// <param name="Roles">What the person may do here.</param>
    /// <param name="Qualifications">What the person is qualified for today.</param>
    /// <param name="Code" example="ABCD-EFGH-JKMN-PQRS">The code by which the person sets the own PIN, shown this once.</param>
    /// <param name="ExpiresAt" example="2026-02-01T14:20:00Z">Until when the code is good.</param>
    public sealed record Output(
        string Badge,
        string Name,
        IReadOnlyList<Role> Roles,
        IReadOnlyList<string> Qualifications,
        string Code,
        DateTimeOffset ExpiresAt
    );

    public static Task<Results<Recorded<Output>, Problem>> HandleAsync(Input input, SignedIn signedIn, AddPerson use, Writes writes) =>
        writes.RecordAsync(cancellation => use.RunAsync(input, signedIn.Actor.PersonId, cancellation));

    /// <summary>Adds the person, who takes up the code of the answer.</summary>
    public async Task<Answer<Output>> RunAsync(Input input, Guid by, CancellationToken cancellation)
    {
        if (await ReadAsync(input, cancellation) is var (badge, problem) && problem is not null)
        {
            return problem;
        }

        var (id, stamp, code) = (Guid.CreateVersion7(), writes.Stamp(by), OneTimeCode.New());
        var given = OneTimeCode.Given(code, id, SetupSentences.FirstPin, stamp);
        await writes.Book.AppendAsync(id, "add-person", Facts(id, badge, input, given, stamp), cancellation);
        var answer = Of(badge, input);
        return Answer.CreatedOnce(new Output(answer.Badge, answer.Name, answer.Roles, answer.Qualifications, code, given.ExpiresAt));
    }

    /// <summary>The first person of the workshop adds themself, with their own PIN.</summary>
    public async Task<Answer<PersonAnswer>> RunFirstAsync(Input input, string pinHash, CancellationToken cancellation)
    {
        if (await ReadAsync(input, cancellation) is var (badge, problem) && problem is not null)
        {
            return problem;
        }

        var id = Guid.CreateVersion7();
        var stamp = writes.Stamp(id);
        await writes.Book.AppendAsync(
            id,
            "add-person",
            Facts(id, badge, input, new PinSetting(stamp.NewId(), id, pinHash, id, stamp.OccurredAt, stamp.RecordedAt), stamp),
            cancellation
        );
        return Answer.Created(Of(badge, input));
    }

    private async Task<(string Badge, Refusal? Problem)> ReadAsync(Input input, CancellationToken cancellation) =>
        !CodeText.TryRead(input.Badge, SetupSentences.ABadge, out var badge, out var bad) ? ("", Refusal.Invalid("badge", bad))
        : string.IsNullOrWhiteSpace(input.Name) || input.Name.Length > 120
            ? (badge, Refusal.Invalid("name", SetupSentences.NameHasToCharacters))
        : await db.Set<Person>().AnyAsync(p => p.Badge == badge, cancellation)
            ? (badge, Refusal.Conflict(SetupSentences.BadgeBelongsToSomebody(badge), RefusalCode.AlreadyExists))
        : (badge, null);

    private static IReadOnlyList<Fact> Facts(Guid id, string badge, Input input, Fact access, Stamp stamp) =>
        [
            new Person(id, badge, input.Name.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt),
            access,
            .. (input.Roles ?? [])
                .Distinct()
                .Select(r => new RoleGrant(stamp.NewId(), id, r, true, stamp.By, stamp.OccurredAt, stamp.RecordedAt)),
            .. (input.Qualifications ?? [])
                .Distinct()
                .Select(q => new QualificationGrant(stamp.NewId(), id, q, true, null, stamp.By, stamp.OccurredAt, stamp.RecordedAt)),
        ];

    private static PersonAnswer Of(string badge, Input input) =>
        new(badge, input.Name.Trim(), [.. (input.Roles ?? []).Distinct()], [.. (input.Qualifications ?? []).Distinct()]);
}

/// <summary>A person who works here.</summary>
/// <param name="Badge" example="BUILD1">The badge, by which the person signs in.</param>
/// <param name="Name" example="Builder One">The name.</param>
/// <param name="Roles">What the person may do here.</param>
/// <param name="Qualifications">What the person is qualified for today.</param>
public sealed record PersonAnswer(string Badge, string Name, IReadOnlyList<Role> Roles, IReadOnlyList<string> Qualifications)
{
    /// <summary>Why the person signs in no more; null while the person works here.</summary>
    public string? DeactivatedBecause { get; init; }

    public static PersonAnswer Of(Actor actor, DateOnly day) =>
        new(
            actor.Badge,
            actor.Name,
            [.. actor.Roles.Order()],
            [.. actor.Qualifications.Select(q => q.Code).Distinct().Where(code => actor.IsQualifiedFor(code, day)).Order()]
        );
}
