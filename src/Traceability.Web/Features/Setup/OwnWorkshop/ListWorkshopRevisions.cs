using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.OwnWorkshop;

/// <summary>A revision of the workshop: who made it, when, and what it changed.</summary>
/// <param name="Revision" example="3">Its number, from 1.</param>
/// <param name="At" example="2026-11-29T14:20:00Z">When it was made.</param>
/// <param name="By">Who made it.</param>
/// <param name="Reason" example="moved house">Why, when it was said.</param>
/// <param name="Changes">What it says otherwise than the one before.</param>
public sealed record WorkshopChange(int Revision, DateTimeOffset At, Who By, string? Reason, IReadOnlyList<FieldChange> Changes);

/// <summary>A field that a revision changed.</summary>
/// <param name="Field" example="name">The field.</param>
/// <param name="Was" example="The Mill">What it said before; null when nothing.</param>
/// <param name="Now" example="The Lower Mill Workshop">What it says since; null when nothing.</param>
public sealed record FieldChange(string Field, string? Was, string? Now);

/// <summary>What the workshop said about itself before, newest first.</summary>
public sealed class ListWorkshopRevisions(WorkshopQuery query, NameQuery names) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/workshop/revisions", HandleAsync)
            .Is(Subjects.Workshop, "listWorkshopRevisions", "What the workshop said about itself before: who changed what, and when.");

    public static async Task<JsonOrCsv<Page<WorkshopChange>>> HandleAsync(
        HttpContext http,
        PageRequest page,
        ListWorkshopRevisions use,
        CancellationToken cancellation
    ) =>
        JsonOrCsv.Of(
            page.Part(await use.AllAsync(cancellation), r => r.Revision.ToString("D9", System.Globalization.CultureInfo.InvariantCulture))
        );

    public async Task<IReadOnlyList<WorkshopChange>> AllAsync(CancellationToken cancellation)
    {
        var all = await query.AllAsync(cancellation);
        var people = await names.PeopleAsync(all.Select(r => r.By), cancellation);
        return
        [
            .. all.Zip(
                all.Skip(1).Append(null),
                (now, before) =>
                    new WorkshopChange(
                        now.Revision,
                        now.OccurredAt,
                        people.GetValueOrDefault(now.By, Who.Nobody),
                        now.Reason,
                        [.. WorkshopChanges.Between(before, now).Select(c => new FieldChange(c.Field, c.Was, c.Now))]
                    )
            ),
        ];
    }

    public Task<WorkshopRevision?> LatestAsync(CancellationToken cancellation) => query.LatestAsync(cancellation);
}
