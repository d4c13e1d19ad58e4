using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Station.Loads;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>One execution of a stage with everything that belongs to it.</summary>
public sealed class ReadAttempt(WorkshopContext db, DossierReader dossiers, NameQuery names, InstrumentsAfter instruments) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/attempts/{id:guid}", HandleAsync)
            .Is(Subjects.Attempts, "readAttempt", "One attempt with readings, fittings and files.");
        api.MapGet("/attempts/{id:guid}/evidence/{evidenceId:guid}", EvidenceAsync)
            .Produces(StatusCodes.Status200OK, contentType: "text/csv", additionalContentTypes: ["audio/wav", "image/jpeg", "image/png"])
            .Is(Subjects.Attempts, "readEvidence", "A file as it was sent.");
    }

    public sealed record InstrumentUsed(string Code, string Kind);

    public sealed record Output(
        Guid Id,
        string Serial,
        string Stage,
        string Title,
        int Number,
        string Station,
        Guid? Load,
        [property: OneOf("AttemptState", "open", "pass", "fail", "conditional", "abandoned")] string State,
        DateTimeOffset OpenedAt,
        Who By,
        DateTimeOffset? EndedAt,
        Who? EndedBy,
        string? Note,
        IReadOnlyList<string> Findings,
        IReadOnlyList<InstrumentUsed> Instruments,
        IReadOnlyList<ReadingAnswer> Readings,
        IReadOnlyList<FitInputs.FittingAnswer> Fittings,
        IReadOnlyList<EvidenceAnswer> Evidence,
        IReadOnlyList<string> InstrumentFindings
    );

    public static async Task<Results<Ok<Output>, Problem>> HandleAsync(Guid id, ReadAttempt use, CancellationToken cancellation) =>
        await use.RunAsync(id, cancellation) is { } attempt
            ? TypedResults.Ok(attempt)
            : ProblemAnswers.From(Refusal.NotFound(StationSentences.ThereIsNoAttempt(id)));

    /// <summary>The bytes of a file, as they were sent.</summary>
    public static async Task<Results<FileContentHttpResult, Problem>> EvidenceAsync(
        Guid id,
        Guid evidenceId,
        WorkshopContext db,
        CancellationToken cancellation
    )
    {
        var found = await (
            from e in db.Set<EvidenceRecord>()
            join f in db.Set<StoredFile>() on e.Sha256 equals f.Sha256
            where
                e.Id == evidenceId
                && (e.AttemptId == id || db.Set<Attempt>().Any(a => a.Id == id && a.LoadId != null && a.LoadId == e.LoadId))
            select new
            {
                e.Name,
                e.MediaType,
                f.Bytes,
            }
        )
            .AsNoTracking()
            .FirstOrDefaultAsync(cancellation);
        return found is null
            ? ProblemAnswers.From(Refusal.NotFound(StationSentences.AttemptHasNoFile(id, evidenceId)))
            : TypedResults.File(found.Bytes, found.MediaType, found.Name + Extension(found.MediaType));
    }

    /// <summary>The attempt, or null.</summary>
    public async Task<Output?> RunAsync(Guid id, CancellationToken cancellation)
    {
        var partId = await db.Set<Attempt>().Where(a => a.Id == id).Select(a => (Guid?)a.PartId).FirstOrDefaultAsync(cancellation);
        if (partId is null || await dossiers.LoadAsync(partId.Value, cancellation) is not { } dossier)
        {
            return null;
        }

        var view = dossier.Attempts.First(a => a.Id == id);
        var (attempt, ending) = (view.Attempt, view.Ending);
        var people = await names.PeopleAsync(
            [attempt.By, .. ending is null ? Array.Empty<Guid>() : [ending.By], .. view.Readings.Select(r => r.Reading.By)],
            cancellation
        );
        return new(
            id,
            dossier.Part.Serial,
            attempt.Stage,
            dossier.Route.Find(attempt.Stage)?.Title ?? attempt.Stage,
            attempt.Number,
            attempt.Station,
            attempt.LoadId,
            StateOf(view),
            attempt.OccurredAt,
            people.GetValueOrDefault(attempt.By, Who.Nobody),
            ending?.OccurredAt,
            ending is null ? null : people.GetValueOrDefault(ending.By, Who.Nobody),
            ending?.Note,
            ending?.Findings ?? [],
            [.. view.Instruments.Select(i => new InstrumentUsed(i.InstrumentCode, i.InstrumentKind))],
            [.. view.Readings.Select(r => ReadingAnswer.Of(r, by => people.GetValueOrDefault(by, Who.Nobody)))],
            await FittingsAsync(view, cancellation),
            [.. view.Evidence.Select(EvidenceAnswer.Of)],
            (await instruments.SayAsync(dossier, [view], cancellation))[id]
        );
    }

    /// <summary>The word for where an attempt stands, corrections taken into account.</summary>
    internal static string StateOf(AttemptView a) => ReadLoad.StateOf(a.Ending is not null, a.Verdict);

    private async Task<IReadOnlyList<FitInputs.FittingAnswer>> FittingsAsync(AttemptView view, CancellationToken cancellation)
    {
        var parts = await names.PartsAsync(view.Fittings.Select(f => f.ChildId).OfType<Guid>(), cancellation);
        var lots = await names.LotsAsync(view.Fittings.Select(f => f.LotId).OfType<Guid>(), cancellation);
        return
        [
            .. view.Fittings.Select(f => new FitInputs.FittingAnswer(
                f.Id,
                f.Position,
                f.ChildId is { } child ? parts[child].Serial : null,
                f.LotId is { } lot ? lots[lot].Number : null,
                f.Quantity
            )),
        ];
    }

    private static string Extension(string mediaType) =>
        mediaType switch
        {
            "text/csv" => ".csv",
            "image/jpeg" => ".jpg",
            "image/png" => ".png",
            _ => ".wav",
        };
}
