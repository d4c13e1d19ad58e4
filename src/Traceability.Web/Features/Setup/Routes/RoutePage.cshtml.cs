using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Domain.Routes.Files;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Access;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>One revision of a route, stage by stage, to be read by people, and to be approved while it is a proposal.</summary>
[Authorize(Roles = $"{nameof(Role.Lead)},{nameof(Role.Quality)}")]
public sealed class RoutePage(
    WorkshopContext db,
    RouteShelf shelf,
    ListRevisions revisions,
    ApproveRevision approve,
    RejectRevision reject,
    WithdrawRevision withdraw,
    PinSignature pins,
    KnownKindsQuery kinds,
    IStringLocalizer<RoutePageTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    public RouteRevision Revision { get; private set; } = null!;

    public Domain.Routes.Route Route { get; private set; } = null!;

    /// <summary>Where it stands, and how many parts are on it.</summary>
    public RevisionRow Standing { get; private set; } = null!;

    /// <summary>The revision in force, or the one before this, to compare it with; null when there is no other.</summary>
    public RevisionRow? Other { get; private set; }

    /// <summary>How many parts in work keep another revision when this one is approved, and which revisions those are.</summary>
    public IReadOnlyList<RevisionRow> Keeping { get; private set; } = [];

    /// <summary>Of a proposal, the kinds it names that the workshop has nothing of.</summary>
    public IReadOnlyList<RouteWarning> Warnings { get; private set; } = [];

    /// <summary>True for whoever wrote it, who may not approve it.</summary>
    public bool IsAuthor => string.Equals(Actor.Badge, Revision.Author, StringComparison.OrdinalIgnoreCase);

    /// <summary>The badge of whom the file asks to approve it; null when it asks nobody.</summary>
    public string? Asked => RouteText.ReadKept(Revision.Text).Route?.ApprovedBy is { Length: > 0 } badge ? badge : null;

    public async Task<IActionResult> OnGetAsync(string model, string kind, int revision)
    {
        var cancellation = HttpContext.RequestAborted;
        if (
            await db.Set<RouteRevision>()
                .AsNoTracking()
                .FirstOrDefaultAsync(r => r.Model == model && r.Kind == kind && r.Revision == revision, cancellation)
            is not { } found
        )
        {
            return NotFound();
        }

        (Revision, Route) = (found, await shelf.GetAsync(db, found.Id, cancellation));
        var all = await revisions.RunAsync(model, kind, cancellation);
        Standing = all.First(r => r.Revision == revision);
        Other = all.Where(r => r.Revision != revision)
            .OrderByDescending(r => r.State == "current")
            .ThenBy(r => Math.Abs(r.Revision - revision))
            .FirstOrDefault();
        Keeping = [.. all.Where(r => r.Revision != revision && r.PartsInWork > 0)];
        Warnings = Standing.State == "proposed" ? await kinds.WarningsOfAsync(RouteText.ReadKept(found.Text).Named, cancellation) : [];
        return Page();
    }

    /// <summary>The file as it was loaded.</summary>
    public async Task<IActionResult> OnGetFileAsync(string model, string kind, int revision) =>
        await OnGetAsync(model, kind, revision) is PageResult
            ? File(System.Text.Encoding.UTF8.GetBytes(Revision.Text), "text/yaml", $"{model}-{kind}-{revision}.yaml".ToLowerInvariant())
            : NotFound();

    /// <summary>Approves it.</summary>
    public async Task<IActionResult> OnPostAsync(string model, string kind, int revision, string? reason, string? aloneBecause)
    {
        var pin = Request.Form[PinSignature.Field].ToString();
        var approved =
            May(Role.Lead, Role.Quality) && await pins.UnprovenAsync(Actor, pin, HttpContext.RequestAborted) is { } unproven
                ? Refuse(unproven)
                : await RecordAsync(
                    [Role.Lead, Role.Quality],
                    c => approve.RunAsync(model, kind, revision, reason ?? "", Actor.Alone(aloneBecause), c)
                );
        if (approved)
        {
            var done = Recorded<ApproveRevision.Output>();
            Done = texts["Approve.Done", done.Revision, done.Model, done.Kind, Domain.Values.WorkshopCalendar.Say(done.EffectiveFrom)];
            return LocalRedirect($"/setup/routes/{done.Model}/{done.Kind}/{done.Revision}");
        }

        return await OnGetAsync(model, kind, revision);
    }

    /// <summary>Rejects it.</summary>
    public async Task<IActionResult> OnPostRejectAsync(string model, string kind, int revision, string? reason) =>
        await RecordAsync([Role.Lead, Role.Quality], c => reject.RunAsync(model, kind, revision, reason ?? "", Actor, c))
            ? Ended(Recorded<RejectRevision.Output>().Reason, "Reject.Done", model, kind, revision)
            : await OnGetAsync(model, kind, revision);

    /// <summary>Takes it back.</summary>
    public async Task<IActionResult> OnPostWithdrawAsync(string model, string kind, int revision, string? reason) =>
        await RecordAsync([Role.Lead, Role.Quality], c => withdraw.RunAsync(model, kind, revision, reason ?? "", Actor, c))
            ? Ended(Recorded<WithdrawRevision.Output>().Reason, "Withdraw.Done", model, kind, revision)
            : await OnGetAsync(model, kind, revision);

    private LocalRedirectResult Ended(string reason, string words, string model, string kind, int revision)
    {
        Done = texts[words, revision, model, kind, reason];
        return LocalRedirect($"/setup/routes/{model}/{kind}/{revision}");
    }
}
