using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>One execution of a stage with everything that belongs to it.</summary>
public sealed class ReadAttempt(WorkshopContext db, DossierReader dossiers, NameQuery names, InstrumentCheckFindings instruments) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/attempts/{id:guid}", HandleAsync)
            .Is(Subjects.Attempts, "readAttempt", "One attempt with readings, fittings and files.");

    /// <summary>An instrument that was used.</summary>
    /// <param name="Code" example="INS-01">The instrument's code.</param>
    /// <param name="Kind" example="insulation-tester">Its kind.</param>
    public sealed record InstrumentUsed(string Code, string Kind);

    /// <summary>One attempt.</summary>
    /// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The attempt's id.</param>
    /// <param name="Serial" example="US26-00034">The part's serial.</param>
    /// <param name="Stage" example="insulation">The stage's code.</param>
    /// <param name="Title" example="Insulation test">The stage's title.</param>
    /// <param name="Number" example="1">Its number among the attempts of this part at this stage, from 1.</param>
    /// <param name="Station" example="INSUL-1">The station's code.</param>
    /// <param name="Load" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c06">The load that it is part of, if any.</param>
    /// <param name="State" example="pass">open, abandoned, or the verdict with corrections taken into account.</param>
    /// <param name="OpenedAt" example="2026-11-25T08:05:00Z">When it was opened.</param>
    /// <param name="By">Who opened it.</param>
    /// <param name="EndedAt" example="2026-11-25T08:25:00Z">When it was closed or abandoned.</param>
    /// <param name="EndedBy">Who ended it.</param>
    /// <param name="Note" example="cable replaced before the test">What was remarked at its end.</param>
    /// <param name="Findings">What was found at its end, in words.</param>
    /// <param name="Instruments">The instruments that were used.</param>
    /// <param name="Readings">Its readings, with the values that count now.</param>
    /// <param name="Fittings">What was fitted in it.</param>
    /// <param name="Evidence">Its files.</param>
    /// <param name="InstrumentFindings">What checks of the instruments after it mean for it.</param>
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

    /// <param name="id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The attempt.</param>
    public static async Task<Results<Ok<Output>, Problem>> HandleAsync(Guid id, ReadAttempt use, CancellationToken cancellation) =>
        await use.RunAsync(id, cancellation) is { } attempt
            ? TypedResults.Ok(attempt)
            : ProblemAnswers.From(Refusal.NotFound(StationSentences.ThereIsNoAttempt(id)));

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
            AttemptState.Of(view),
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
            (await instruments.OfAsync(dossier, [view], cancellation))[id]
        );
    }

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
}
