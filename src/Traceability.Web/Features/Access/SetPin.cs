using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Access;

/// <summary>
/// A person sets their PIN, with the one-time code that the workshop lead gave out or with the present PIN. Open to anybody, so every try
/// is counted as at the sign-in. All sessions begun with the old PIN end.
/// </summary>
public sealed class SetPin(WorkshopContext db, PinProof proof, PinRules rules, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/pins", HandleAsync)
            .AllowAnonymous()
            .KeepsNothing()
            .Is(Subjects.Access, "setPin", "Set one's own PIN with a one-time code or the present PIN; ends the person's sessions.");

    /// <summary>The new PIN, with either the one-time code or the present PIN.</summary>
    /// <param name="Badge" example="BUILD1">The person's badge.</param>
    /// <param name="NewPin" example="4071">The PIN that the person chooses: 4 to 12 digits.</param>
    /// <param name="Code" example="BCDF-GHJK-MNPQ-RSTV">The one-time code that the workshop lead gave out.</param>
    /// <param name="Pin" example="2958">The present PIN.</param>
    public sealed record Input(string Badge, string NewPin, string? Code = null, string? Pin = null);

    /// <summary>Whose PIN was set.</summary>
    /// <param name="Badge" example="BUILD1">The person's badge.</param>
    /// <param name="Name" example="Ilsa Branoch">The person's name.</param>
    /// <param name="SetAt" example="2026-11-25T08:05:00Z">When it was set.</param>
    public sealed record Output(string Badge, string Name, DateTimeOffset SetAt);

    /// <summary>What it came to; neither when badge and code, or PIN, do not belong together.</summary>
    public sealed record Outcome(WrittenAnswer? Written, Throttled? Throttled);

    private sealed record Proven(PinCredential Credential, string NewHash);

    public static async Task<Results<Changed<Output>, Problem>> HandleAsync(Input input, SetPin use, CancellationToken cancellation) =>
        await use.RunAsync(input, cancellation) switch
        {
            { Written: { } written } => Writes.ChangedAs<Output>(written),
            { Throttled: { } throttled } => ProblemAnswers.From(throttled.ToRefusal(PinProof.BadgeOf(input.Badge))),
            _ => ProblemAnswers.Of(ProblemKinds.WrongBadgeOrPin, AccessSentences.BadgeAndCodeDoNotBelongTogether),
        };

    public async Task<Outcome> RunAsync(Input input, CancellationToken cancellation)
    {
        var problem =
            string.IsNullOrEmpty(input.Code) == string.IsNullOrEmpty(input.Pin)
                ? Refusal.Invalid("code", AccessSentences.SendTheCodeOrThePin)
                : await rules.ProblemAsync("newPin", input.NewPin, cancellation);
        if (problem is not null)
        {
            return new(new(0, "", problem, false), null);
        }

        // The new hash is made where the old one was compared, before the transaction.
        var now = writes.Now;
        var tried = await proof.TryAsync(
            input.Badge,
            credential => Fits(credential, input, now) ? new Proven(credential!, PinHash.Of(input.NewPin)) : null,
            cancellation
        );
        return tried.Proven is { } proven
            ? new(
                await writes.Book.WriteAsync(WriteRequest.Unkeyed, JsonRules.Options, inside => SetAsync(proven, inside), cancellation),
                null
            )
            : new(null, tried.Throttled);
    }

    private async Task<Answer<Output>> SetAsync(Proven proven, CancellationToken cancellation)
    {
        var person = proven.Credential.Person;
        await writes.Book.LockAsync(person.Id, cancellation);
        if ((await PinCredential.OfAsync(db, person.Badge, cancellation))?.ProvenBy != proven.Credential.ProvenBy)
        {
            return Refusal.Conflict(AccessSentences.ThePinWasChangedMeanwhile);
        }

        var stamp = writes.Stamp(person.Id);
        await writes.Book.AppendAsync(
            person.Id,
            "set-pin",
            [new PinSetting(stamp.NewId(), person.Id, proven.NewHash, stamp.By, stamp.OccurredAt, stamp.RecordedAt)],
            cancellation
        );
        await PersonSessions.EndAsync(db, person.Id, cancellation);
        return Answer.Ok(new Output(person.Badge, person.Name, stamp.RecordedAt));
    }

    /// <summary>A wrong code takes as long as a wrong PIN.</summary>
    private static bool Fits(PinCredential? credential, Input input, DateTimeOffset now) =>
        PinHash.Fits(credential?.Pin?.Hash, input.Pin ?? "") || (input.Code is { } code && OneTimeCode.Fits(credential?.Code, code, now));
}
