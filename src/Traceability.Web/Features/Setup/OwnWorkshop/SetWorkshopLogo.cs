using System.Security.Cryptography;
using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Documents.Logos;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.OwnWorkshop;

/// <summary>The logo at the head of certificates, kept byte for byte; a revision of the workshop with all else as it was.</summary>
public sealed class SetWorkshopLogo(WorkshopQuery query, WorkshopNotice notice, CurrentWorkshop current, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/workshop/logo", HandleAsync)
            .For(Role.Lead)
            .TakesFile(LogoFile.Svg, LogoFile.Png)
            .Is(Subjects.Workshop, "setWorkshopLogo", "Give the workshop a logo (image/svg+xml or image/png, at most 1 MB).");

    public static async Task<Results<Recorded<WorkshopAnswer>, Problem>> HandleAsync(
        HttpContext http,
        SignedIn signedIn,
        SetWorkshopLogo use,
        Writes writes
    )
    {
        if (http.Request.ContentType?.Split(';')[0].Trim().ToLowerInvariant() is not (LogoFile.Svg or LogoFile.Png))
        {
            return ProblemAnswers.Of(ProblemKinds.UnsupportedContent, SetupSentences.LogoIsNoPicture);
        }

        return await LogoBytes.ReadAsync(http.Request.Body, http.RequestAborted) is { } bytes
            ? await writes.RecordAsync(cancellation => use.RunAsync(bytes, signedIn.Actor, cancellation))
            : ProblemAnswers.Of(ProblemKinds.BodyTooLarge, SetupSentences.LogoIsTooLarge);
    }

    public async Task<Answer<WorkshopAnswer>> RunAsync(byte[] bytes, Actor actor, CancellationToken cancellation)
    {
        var (type, problem) = LogoFile.Check(bytes);
        if (problem is not null)
        {
            return LogoBytes.Refused(problem);
        }

        var sha256 = Convert.ToHexStringLower(SHA256.HashData(bytes));
        return await ReviseAsync(sha256, type, () => writes.Book.KeepFileAsync(sha256, bytes, cancellation), actor, cancellation);
    }

    /// <summary>The workshop goes without a logo from now on; certificates of before keep theirs.</summary>
    public Task<Answer<WorkshopAnswer>> RemoveAsync(Actor actor, CancellationToken cancellation) =>
        ReviseAsync(null, null, () => Task.CompletedTask, actor, cancellation);

    private async Task<Answer<WorkshopAnswer>> ReviseAsync(
        string? sha256,
        string? type,
        Func<Task> keep,
        Actor actor,
        CancellationToken cancellation
    )
    {
        await writes.Book.LockAsync(WorkshopRevision.Subject, cancellation);
        var decision = WorkshopRevisions.WithLogo(await query.LatestAsync(cancellation), sha256, type, writes.Stamp(actor.PersonId));
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        if (decision.Facts.Count > 0)
        {
            await keep();
            await writes.Book.AppendAsync(WorkshopRevision.Subject, "set-workshop-logo", decision.Facts, cancellation);
            current.Forget();
        }

        return Answer.Created(
            WorkshopAnswer.Of((await notice.ReadAsync(cancellation)) with { Revision = decision.Value }, new(actor.Badge, actor.Name))
        );
    }
}
