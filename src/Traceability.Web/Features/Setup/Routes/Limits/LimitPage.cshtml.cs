using System.Globalization;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Quality;
using Traceability.Domain.Records;
using Traceability.Domain.Routes.Drafts;
using Traceability.Domain.Routes.Files;
using Traceability.Domain.Stages;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Routes.Limits;

/// <summary>Another limit for one characteristic, with a reason: the smallest revision of a route.</summary>
[Authorize(Roles = nameof(Role.Lead))]
public sealed class LimitPage(LatestDraft latest, LoadRoute load, TryLimits tried, IStringLocalizer<RouteEditTexts> texts, Writes writes)
    : DeskPage(writes)
{
    [FromRoute]
    public string Model { get; set; } = "";

    [FromRoute]
    public string Kind { get; set; } = "";

    /// <summary>The revision that it is made from.</summary>
    public LatestDraft.Found From { get; private set; } = null!;

    /// <summary>The stage, as its latest revision has it.</summary>
    public DraftMap Stage { get; private set; } = null!;

    /// <summary>The characteristic, with the limits as they are or as typed.</summary>
    public DraftMap Characteristic { get; private set; } = null!;

    /// <summary>What the last parts would have come to; null until asked.</summary>
    public IReadOnlyList<LimitTrial>? Trials { get; private set; }

    public async Task<IActionResult> OnGetAsync(string? stage, string? characteristic) =>
        await FindAsync(stage, characteristic, HttpContext.RequestAborted) ? Page() : NotFound();

    /// <summary>Tries the limits, or proposes them as the next revision.</summary>
    public async Task<IActionResult> OnPostAsync(
        string? stage,
        string? characteristic,
        string? nominal,
        string? lower,
        string? upper,
        string? reason,
        int @base,
        string? act
    )
    {
        var cancellation = HttpContext.RequestAborted;
        if (!await FindAsync(stage, characteristic, cancellation))
        {
            return NotFound();
        }

        (Characteristic["nominal"], Characteristic["lower"], Characteristic["upper"]) = (Plain(nominal), Plain(lower), Plain(upper));
        From.Draft["reason"] = (reason ?? "").Trim();
        var text = DraftWriter.Write(From.Draft);
        var reading = RouteText.Read(text, StageMethods.Requirements);
        if (reading.Route is not { } route)
        {
            Refuse(Domain.Work.Refusal.Invalid(FieldOf(reading.Problems[0]), reading.Problems[0].Message));
            return Page();
        }

        if (act == "try")
        {
            Trials = [.. (await tried.RunAsync(route, cancellation)).Where(t => t.Stage.Code == stage)];
            return Page();
        }

        var refused =
            From.Latest != @base
                ? Refuse(Domain.Work.Refusal.Conflict(SetupSentences.AnotherRevisionWasProposed(From.Latest, From.LatestAuthor, @base + 1)))
            : string.IsNullOrWhiteSpace(reason) ? Refuse(Domain.Work.Refusal.Invalid("reason", SetupSentences.SayWhyTheLimitIsChanged))
            : !await RecordAsync([Role.Lead], c => load.RunAsync(text, Actor.PersonId, c));
        if (Refusal is not null || refused)
        {
            return Page();
        }

        var done = Recorded<LoadRoute.Output>();
        Done = texts["Edit.Proposed", done.Revision, done.Model, done.Kind];
        return LocalRedirect($"/setup/routes/{done.Model}/{done.Kind}/{done.Revision}");
    }

    private async Task<bool> FindAsync(string? stage, string? characteristic, CancellationToken cancellation)
    {
        if (
            await latest.FindAsync(Model, Kind, Actor, cancellation) is not { } found
            || found.Draft.Items("stages").Find(s => s["code"] == stage) is not { } inStage
            || inStage.Items("characteristics").Find(c => c["name"] == characteristic) is not { } it
        )
        {
            return false;
        }

        (From, Stage, Characteristic) = (found, inStage, it);
        return true;
    }

    private static string FieldOf(RouteProblem problem) =>
        problem.Path.Split('.')[^1] is "lower" or "upper" or "nominal" ? problem.Path.Split('.')[^1] : "lower";

    private static string Plain(string? typed) =>
        (typed ?? "").Trim() is var t && decimal.TryParse(t.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out _)
            ? t.Replace(',', '.')
            : t;
}
