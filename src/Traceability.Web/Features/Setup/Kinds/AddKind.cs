using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Kinds;

/// <summary>Enters a kind in one of the workshop's lists; one that came by use gets its title so.</summary>
public sealed partial class AddKind(KindsQuery kinds, KindDoor door, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/kinds", HandleAsync)
            .For(Role.Lead, Role.Quality)
            .Is(Subjects.SetUp, "addKind", "Enter a kind in one of the workshop's lists.");

    private const int LongestTitle = 120;

    /// <summary>A kind to be chosen from now on.</summary>
    /// <param name="Of" example="lot">Which list: lot, part, instrument, qualification, complaint or finding.</param>
    /// <param name="Code" example="film">Its code: small letters, digits and hyphens, as routes name it.</param>
    /// <param name="Title" example="Metallised film">What it is called, at most 120 characters.</param>
    public sealed record Input(string Of, string Code, string Title);

    public static Task<Results<Recorded<ListKinds.KindAnswer>, Problem>> HandleAsync(
        Input input,
        SignedIn signedIn,
        AddKind use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(input, signedIn.Actor.PersonId, cancellation));

    public async Task<Answer<ListKinds.KindAnswer>> RunAsync(Input input, Guid by, CancellationToken cancellation)
    {
        if (KindLists.Read(input.Of) is not { } of)
        {
            return Refusal.Invalid("of", SetupSentences.ListsOfKinds(KindLists.Words));
        }

        var code = input.Code.Trim();
        if (!KindPattern().IsMatch(code))
        {
            return Refusal.Invalid("code", SetupSentences.CodeOfKindIsSmallLetters);
        }

        if (string.IsNullOrWhiteSpace(input.Title) || input.Title.Trim().Length > LongestTitle)
        {
            return Refusal.Invalid("title", SetupSentences.TitleHasToCharacters);
        }

        // Two who enter one kind at one moment do so one after the other.
        await writes.Book.LockAsync(WorkshopKind.SubjectOf(of, code), cancellation);
        if ((await kinds.OfAsync(of, cancellation)).FirstOrDefault(k => k.Code == code) is { ByUse: false } there)
        {
            return Refusal.Conflict(SetupSentences.KindIsListedAlready(code, there.Title), RefusalCode.AlreadyExists);
        }

        if (await door.ProblemAsync(of, code, cancellation) is { } setAside)
        {
            return setAside;
        }

        var stamp = writes.Stamp(by);
        var kind = new WorkshopKind(stamp.NewId(), of, code, input.Title.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        await writes.Book.AppendAsync(WorkshopKind.SubjectOf(of, code), "add-kind", [kind], cancellation);
        return Answer.Created(new ListKinds.KindAnswer(KindLists.WordOf(of), code, kind.Title, false, null));
    }

    [GeneratedRegex("^[a-z][a-z0-9-]{1,39}$")]
    private static partial Regex KindPattern();
}
