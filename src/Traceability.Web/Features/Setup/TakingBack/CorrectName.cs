using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.TakingBack;

/// <summary>
/// Corrects the name of a person, or what a station or an instrument is called. The name of before stays in the record, and on what was
/// issued with it.
/// </summary>
public sealed class CorrectName(FindThing things, SetupHistory history, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/{sort:regex(^(people|stations|instruments)$)}/{code}/name", HandleAsync)
            .For(Role.Lead)
            .Is(Subjects.SetUp, "correctName", "Correct the name of a person, or what a station or an instrument is called.");

    private const int Longest = 120,
        LongestReason = 400;

    private static readonly Dictionary<string, SetupSort> Sorts = new()
    {
        ["people"] = SetupSort.Person,
        ["stations"] = SetupSort.Station,
        ["instruments"] = SetupSort.Instrument,
    };

    /// <summary>The right name.</summary>
    /// <param name="Name" example="Hot plate 1">The name, at most 120 characters.</param>
    /// <param name="Reason" example="misspelt">Why the one of before was wrong, at most 400 characters.</param>
    public sealed record Input(string Name, string Reason);

    /// <summary>What it is called now.</summary>
    /// <param name="Code" example="PLATE-1">Its code, or the person's badge.</param>
    /// <param name="Name" example="Hot plate 1">Its name.</param>
    public sealed record Output(string Code, string Name);

    /// <param name="sort" example="stations">What it is: people, stations or instruments.</param>
    /// <param name="code" example="PLATE-1">Its code, or the person's badge.</param>
    public static Task<Results<Changed<Output>, Problem>> HandleAsync(
        string sort,
        string code,
        Input input,
        SignedIn signedIn,
        CorrectName use,
        Writes writes
    ) => writes.ChangeAsync(c => use.RunAsync(Sorts[sort], code, input, signedIn.Actor, c));

    public async Task<Answer<Output>> RunAsync(SetupSort sort, string code, Input input, Actor actor, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(input.Name) || input.Name.Trim().Length > Longest)
        {
            return Refusal.Invalid("name", SetupSentences.NameHasToCharacters);
        }

        if (string.IsNullOrWhiteSpace(input.Reason) || input.Reason.Length > LongestReason)
        {
            return Refusal.Invalid("reason", TakingBackSentences.SayWhyTheNameWasWrong);
        }

        var (named, unknown) = await things.RunAsync(sort, code, null, cancellation);
        if (named is not { } thing)
        {
            return unknown!;
        }

        await writes.Book.LockAsync(thing.SubjectId, cancellation);
        var name = input.Name.Trim();
        if ((await history.RunAsync(thing, cancellation)).Now == name)
        {
            return Refusal.Conflict(TakingBackSentences.IsCalledSoAlready(thing.Name, name), RefusalCode.AlreadyDone);
        }

        var stamp = writes.Stamp(actor.PersonId);
        await writes.Book.AppendAsync(
            thing.SubjectId,
            "correct-name",
            [new NameCorrection(stamp.NewId(), thing.SubjectId, name, input.Reason.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt)],
            cancellation
        );
        return Answer.Ok(new Output(thing.Code, name));
    }
}
