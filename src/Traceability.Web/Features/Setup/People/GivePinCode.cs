using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
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
/// Gives a code to somebody whose PIN is forgotten or known to others. Nobody sets another's PIN: the person does it with the code. The PIN
/// of before ends at once, and with it every session.
/// </summary>
public sealed class GivePinCode(WorkshopContext db, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/people/{badge}/pin-code", HandleAsync)
            .For(Role.Lead)
            .Is(
                Subjects.People,
                "givePinCode",
                "Give a one-time code, good for a day, by which the person sets a new PIN; ends the old PIN and the person's sessions."
            );

    private const int LongestReason = 400;

    /// <summary>Why a code is given.</summary>
    /// <param name="Reason" example="PIN forgotten">Why, at most 400 characters.</param>
    public sealed record Input(string Reason);

    /// <summary>The code, shown this once.</summary>
    /// <param name="Code" example="ABCD-EFGH-JKMN-PQRS">The code, in groups of four letters.</param>
    /// <param name="ExpiresAt" example="2026-02-01T14:20:00Z">Until when it is good.</param>
    public sealed record Output(string Code, DateTimeOffset ExpiresAt);

    /// <param name="badge" example="BUILD1">The person's badge.</param>
    public static Task<Results<Recorded<Output>, Problem>> HandleAsync(
        string badge,
        Input input,
        SignedIn signedIn,
        GivePinCode use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(badge, input.Reason, signedIn.Actor, cancellation));

    public async Task<Answer<Output>> RunAsync(string badge, string reason, Actor actor, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(reason) || reason.Length > LongestReason)
        {
            return Refusal.Invalid("reason", SetupSentences.SayWhyACodeIsGiven);
        }

        var known = PinProof.BadgeOf(badge);
        if (await db.Set<Person>().AsNoTracking().FirstOrDefaultAsync(p => p.Badge == known, cancellation) is not { } person)
        {
            return Refusal.NotFound(SetupSentences.NobodyHasTheBadge(badge));
        }

        // Whoever lost the code before it was used could not give another: the only lead would be locked out by it.
        if (person.Id == actor.PersonId)
        {
            return Refusal.Conflict(SetupSentences.OwnPinIsChangedWithThePin);
        }

        var (stamp, code) = (writes.Stamp(actor.PersonId), OneTimeCode.New());
        var given = OneTimeCode.Given(code, person.Id, reason.Trim(), stamp);
        await writes.Book.AppendAsync(person.Id, "give-pin-code", [given], cancellation);
        await PersonSessions.EndAsync(db, person.Id, cancellation);
        return Answer.CreatedOnce(new Output(code, given.ExpiresAt));
    }
}
