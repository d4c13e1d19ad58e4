using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Codes;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Station.SignIn;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.People;

/// <summary>Makes a person known: badge, name, PIN, roles and qualifications.</summary>
public sealed class AddPerson(WorkshopContext db, Writes writes)
{
    public sealed record Input(string Badge, string Name, string Pin, IReadOnlyList<Role>? Roles = null, IReadOnlyList<string>? Qualifications = null);

    public static Task<IResult> HandleAsync(Input input, SignedIn signedIn, AddPerson use, Writes writes) =>
        writes.RunAsync(cancellation => use.RunAsync(input, signedIn.Actor.PersonId, cancellation));

    /// <summary>Adds the person; <paramref name="by"/> null means that the first person of the workshop adds themself.</summary>
    public async Task<Answer> RunAsync(Input input, Guid? by, CancellationToken cancellation)
    {
        if (!CodeText.TryRead(input.Badge, SetupSentences.ABadge, out var badge, out var bad))
        {
            return Refusal.Invalid("badge", bad);
        }

        if (PersonFields.Problem(input.Name, input.Pin) is { } problem)
        {
            return problem;
        }

        if (await db.Set<Person>().AnyAsync(p => p.Badge == badge, cancellation))
        {
            return Refusal.Conflict(SetupSentences.BadgeBelongsToSomebody(badge), RefusalCode.AlreadyExists);
        }

        var id = Guid.CreateVersion7();
        var stamp = writes.Stamp(by ?? id);
        List<Fact> facts =
        [
            new Person(id, badge, input.Name.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt),
            new PinSetting(stamp.NewId(), id, SignIn.HashPin(input.Pin), stamp.By, stamp.OccurredAt, stamp.RecordedAt),
            .. (input.Roles ?? []).Distinct().Select(r => new RoleGrant(stamp.NewId(), id, r, true, stamp.By, stamp.OccurredAt, stamp.RecordedAt)),
            .. (input.Qualifications ?? []).Distinct().Select(q => new QualificationGrant(stamp.NewId(), id, q, true, null, stamp.By, stamp.OccurredAt, stamp.RecordedAt)),
        ];
        await writes.Book.AppendAsync(id, "add-person", facts, cancellation);
        return Answer.Created(new PersonAnswer(badge, input.Name.Trim(), [.. (input.Roles ?? []).Distinct()], [.. (input.Qualifications ?? []).Distinct()]));
    }
}

/// <summary>A person in answers.</summary>
public sealed record PersonAnswer(string Badge, string Name, IReadOnlyList<Role> Roles, IReadOnlyList<string> Qualifications)
{
    public static PersonAnswer Of(Actor actor, DateOnly day) => new(
        actor.Badge, actor.Name, [.. actor.Roles.Order()],
        [.. actor.Qualifications.Select(q => q.Code).Distinct().Where(code => actor.IsQualifiedFor(code, day)).Order()]);
}

/// <summary>What a name and a PIN must look like.</summary>
internal static class PersonFields
{
    public static Refusal? Problem(string name, string pin) =>
        string.IsNullOrWhiteSpace(name) || name.Length > 120 ? Refusal.Invalid("name", SetupSentences.NameHasToCharacters)
        : ProblemWithPin(pin);

    public static Refusal? ProblemWithPin(string pin) =>
        pin.Length is >= 4 and <= 12 && pin.All(char.IsAsciiDigit) ? null : Refusal.Invalid("pin", SetupSentences.PinHasToDigits);
}
