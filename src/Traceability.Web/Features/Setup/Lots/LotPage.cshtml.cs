using System.Text;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Quality.Holds;
using Traceability.Web.Features.Quality.WhereUsed;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Lots;

/// <summary>One lot: what it is, what was decided, and everything that contains it.</summary>
public sealed class LotPage(
    WorkshopContext db,
    LotQuery lots,
    TallySample tally,
    LotDecisions decisions,
    ListHolds holds,
    FindUses uses,
    PreviewHold previews,
    NameQuery names,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    [FromRoute]
    public string Number { get; set; } = "";

    public LotAnswer Lot { get; private set; } = null!;

    public IReadOnlyList<HoldAnswer> Holds { get; private set; } = [];

    /// <summary>Every decision with who took it, oldest first.</summary>
    public IReadOnlyList<(LotDecision Decision, Who By)> Decisions { get; private set; } = [];

    /// <summary>What contains it; null for those who may not ask.</summary>
    public Page<UseOfLot>? Uses { get; private set; }

    /// <summary>What contains the lot now, and so goes on or stops with it; null for those who do not decide.</summary>
    public PreviewHold.Output? Touches { get; private set; }

    /// <summary>True when the lot has a life of its own to be looked at, as a film lot has.</summary>
    public bool HasRoute { get; private set; }

    public Paging Paging { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync() => await LoadAsync() ? Page() : NotFound();

    public Task<IActionResult> OnPostReleaseAsync(string? reason) => DecideAsync(LotState.Released, reason, texts["Lot.ReleasedNow"]);

    public Task<IActionResult> OnPostQuarantineAsync(string? reason) =>
        DecideAsync(LotState.Quarantined, reason, texts["Lot.QuarantinedNow"]);

    /// <summary>The whole table of what contains it, for a recall list.</summary>
    public async Task<IActionResult> OnGetCsvAsync() =>
        !May(Role.Quality, Role.Service) ? Forbid()
        : await uses.RunAsync(Number, null, new(int.MaxValue - 1, null), HttpContext.RequestAborted) is { } all
            ? File(Encoding.UTF8.GetBytes(Csv.Of(all.Items)), "text/csv", $"where-used-{Number}.csv")
        : NotFound();

    private async Task<IActionResult> DecideAsync(LotState state, string? reason, string done)
    {
        if (await RecordAsync([Role.Quality], c => decisions.RunAsync(Number, state, reason ?? "", null, Actor, c)))
        {
            Done = done;
            return RedirectToPage(new { Number });
        }

        return await LoadAsync() ? Page() : NotFound();
    }

    private async Task<bool> LoadAsync()
    {
        var cancellation = HttpContext.RequestAborted;
        if (await lots.FindAsync([Number.Trim().ToUpperInvariant()], cancellation) is not [var found])
        {
            return false;
        }

        (Number, Lot) = (
            found.Lot.Number,
            LotAnswer.Of(found) with
            {
                Sample = TallySample.Output.Of(await tally.RunAsync(found.Lot, null, cancellation)),
            }
        );
        Holds = await holds.OfSubjectAsync(found.Lot.Id, cancellation);
        HasRoute = await db.Set<Part>().AnyAsync(p => p.Id == found.Lot.Id, cancellation);
        var taken = await db.Set<LotDecision>()
            .AsNoTracking()
            .Where(d => d.LotId == found.Lot.Id)
            .OrderBy(d => d.RecordedAt)
            .ToListAsync(cancellation);
        var people = await names.PeopleAsync(taken.Select(d => d.By), cancellation);
        Decisions = [.. taken.Select(d => (d, people.GetValueOrDefault(d.By, Who.Nobody)))];
        Uses = May(Role.Quality, Role.Service)
            ? await uses.RunAsync(Number, null, await Paging.AskedAsync(HttpContext), cancellation)
            : null;
        Touches = May(Role.Quality) ? await previews.OfLotAsync(Number, cancellation) : null;
        Paging = Paging.Of(Request, Uses?.Next);
        return true;
    }
}
