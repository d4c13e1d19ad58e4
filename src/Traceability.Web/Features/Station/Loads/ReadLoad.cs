using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Station.StageWork;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.Loads;

/// <summary>A load as it stands: its parts with their verdicts, and its files.</summary>
public sealed class ReadLoad : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/loads/{id:guid}", HandleAsync).Is(Subjects.Loads, "readLoad", "A load with its parts and files.");

    /// <summary>A part in the load.</summary>
    /// <param name="Attempt" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">Its attempt.</param>
    /// <param name="Serial" example="CS26-00012">Its serial.</param>
    /// <param name="State" example="pass">open, abandoned, or the verdict.</param>
    public sealed record PartInLoad(
        Guid Attempt,
        string Serial,
        [property: OneOf("AttemptState", "open", "pass", "fail", "conditional", "abandoned")] string State
    );

    /// <summary>One load.</summary>
    /// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c06">The load's id.</param>
    /// <param name="Stage" example="soak-warm">The stage's code.</param>
    /// <param name="Station" example="CLIMATE-1">The station's code.</param>
    /// <param name="Instruments">The codes of the instruments that are used.</param>
    /// <param name="OpenedAt" example="2026-11-25T08:05:00Z">When it was opened.</param>
    /// <param name="By">Who opened it.</param>
    /// <param name="Parts">Its parts, by serial.</param>
    /// <param name="Evidence">Its files, oldest first.</param>
    public sealed record Output(
        Guid Id,
        string Stage,
        string Station,
        IReadOnlyList<string> Instruments,
        DateTimeOffset OpenedAt,
        Who By,
        IReadOnlyList<PartInLoad> Parts,
        IReadOnlyList<AttachEvidence.Output> Evidence
    );

    /// <param name="id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c06">The load.</param>
    public static async Task<Results<Ok<Output>, Problem>> HandleAsync(
        Guid id,
        WorkshopContext db,
        NameQuery names,
        CancellationToken cancellation
    )
    {
        if (await db.Set<Load>().AsNoTracking().FirstOrDefaultAsync(l => l.Id == id, cancellation) is not { } load)
        {
            return ProblemAnswers.From(Refusal.NotFound(StationSentences.ThereIsNoLoad(id)));
        }

        var parts = await (
            from a in db.Set<Attempt>()
            join p in db.Set<Part>() on a.PartId equals p.Id
            from e in db.Set<AttemptEnding>().Where(e => e.AttemptId == a.Id).DefaultIfEmpty()
            where a.LoadId == id
            orderby p.Serial
            select new
            {
                a.Id,
                p.Serial,
                Ended = e != null,
                Verdict = e == null ? null : e.Verdict,
            }
        ).ToListAsync(cancellation);
        var files = await db.Set<EvidenceRecord>()
            .AsNoTracking()
            .Where(e => e.LoadId == id)
            .OrderBy(e => e.RecordedAt)
            .ToListAsync(cancellation);
        var by = await names.PeopleAsync([load.By], cancellation);
        return TypedResults.Ok(
            new Output(
                load.Id,
                load.Stage,
                load.Station,
                load.Instruments,
                load.OccurredAt,
                by.GetValueOrDefault(load.By, Who.Nobody),
                [.. parts.Select(p => new PartInLoad(p.Id, p.Serial, AttemptState.Of(p.Ended, p.Verdict)))],
                [.. files.Select(f => new AttachEvidence.Output(f.Id, f.Name, f.Kind, f.Sha256, f.LengthBytes))]
            )
        );
    }
}
