using System.Globalization;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Quality;
using Traceability.Domain.Records;
using Traceability.Domain.Routes.Drafts;
using Traceability.Domain.Routes.Files;
using Traceability.Domain.Stages;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Routes.Drafts;

/// <summary>
/// A route edited stage by stage, or as the text of its file: the two are the same. The form carries the whole draft as that text, so
/// nothing is kept on the server before it is proposed; every button checks it and says at each field what is wrong.
/// </summary>
[Authorize(Roles = nameof(Role.Lead))]
public sealed class EditPage(
    WorkshopContext db,
    LoadRoute load,
    LatestDraft latest,
    KnownKindsQuery kinds,
    DraftChoices choices,
    DraftOffers offers,
    TryLimits tried,
    WorkshopCalendar calendar,
    IStringLocalizer<RouteEditTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    /// <summary>Fields of the draft begin with this.</summary>
    public const string Prefix = "f.";

    private static readonly string[] EditedInHead = ["title", "serialPrefix", "effectiveFrom", "approvedBy", "reason"];

    [FromRoute]
    public string Model { get; set; } = "";

    [FromRoute]
    public string Kind { get; set; } = "";

    /// <summary>The draft; null when its text cannot be taken apart and must be mended first.</summary>
    public DraftMap? Draft { get; private set; }

    /// <summary>The whole draft as the text of its file.</summary>
    public string Text { get; private set; } = "";

    /// <summary>The stage that is open, from 0; <see cref="DraftActs.Head"/> for the head.</summary>
    public int Open { get; private set; } = DraftActs.Head;

    /// <summary>True when the text is edited.</summary>
    public bool AsText { get; private set; }

    /// <summary>The latest revision when the editor was opened; 0 when there was none.</summary>
    public int Base { get; private set; }

    /// <summary>What the text says as a route.</summary>
    public RouteReading Reading { get; private set; } = new(null, []);

    /// <summary>Kinds that the workshop has nothing of.</summary>
    public IReadOnlyList<RouteWarning> Warnings { get; private set; } = [];

    /// <summary>What the workshop has.</summary>
    public DraftChoices Choices => choices;

    /// <summary>What each field offers.</summary>
    public DraftOffers Offers => offers;

    /// <summary>What the last parts would have come to; null until asked.</summary>
    public IReadOnlyList<LimitTrial>? Trials { get; private set; }

    /// <summary>True once something was sent: only then is what is missing said.</summary>
    public bool Checked { get; private set; }

    protected override IReadOnlyCollection<string> LongFields => ["text"];

    /// <summary>Opens the latest revision, or another, for editing; or a new route with that title.</summary>
    public async Task<IActionResult> OnGetAsync(int? from, int? stage, string? title, string? prefix)
    {
        var cancellation = HttpContext.RequestAborted;
        var all = await RevisionsAsync(cancellation);
        if (from is not null && all.TrueForAll(r => r.Revision != from))
        {
            return NotFound();
        }

        Base = all.Select(r => r.Revision).DefaultIfEmpty(0).Max();
        Text = all.Find(r => r.Revision == (from ?? Base))?.Text ?? DraftWriter.Write(Blank(title ?? "", prefix ?? ""));
        Draft = (from is null ? (await latest.FindAsync(Model, Kind, Actor, cancellation))?.Draft : null) ?? DraftReader.Read(Text);
        if (Draft is not null)
        {
            Number(Draft);
            Text = DraftWriter.Write(Draft);
            Open = stage is { } s && s >= 0 && s < Draft.Items("stages").Count ? s : DraftActs.Head;
        }

        await ShowAsync(cancellation);
        return Page();
    }

    /// <summary>Takes over what was typed, does what the button says, checks, and proposes when that is asked.</summary>
    public async Task<IActionResult> OnPostAsync(string? text, int open, int @base, bool asText, string? act)
    {
        var cancellation = HttpContext.RequestAborted;
        (Text, Open, Base, AsText, Checked) = ((text ?? "").ReplaceLineEndings("\n"), open, @base, asText, true);
        Draft = DraftReader.Read(Text);
        if (Draft is { } draft)
        {
            if (!AsText)
            {
                TakeOver(draft);
            }

            AsText = act == "text" || (AsText && act != "fields");
            Open = DraftActs.Do(
                draft,
                Math.Clamp(Open, DraftActs.Head, draft.Items("stages").Count - 1),
                act ?? "",
                texts["Edit.NewStage"]
            );
            if (act == "renumber")
            {
                Base = (await RevisionsAsync(cancellation)).Select(r => r.Revision).DefaultIfEmpty(0).Max();
                draft["revision"] = (Base + 1).ToString(CultureInfo.InvariantCulture);
            }

            // A text that was typed is kept letter by letter until it is edited by fields.
            Text = asText && AsText && act != "renumber" ? Text : DraftWriter.Write(draft);
        }
        else
        {
            AsText = true;
        }

        await ShowAsync(cancellation);
        if (act == "dry" && Reading.Route is { } route)
        {
            Trials = await tried.RunAsync(route, cancellation);
        }

        if (act == "save" && await ProposedAsync(cancellation))
        {
            var loaded = Recorded<LoadRoute.Output>();
            Done = texts["Edit.Proposed", loaded.Revision, loaded.Model, loaded.Kind];
            return LocalRedirect($"/setup/routes/{loaded.Model}/{loaded.Kind}/{loaded.Revision}");
        }

        return Page();
    }

    /// <summary>What is wrong at a place of the draft, or of the stage that is open.</summary>
    public IReadOnlyList<string> ProblemsAt(string path) =>
        Checked ? [.. Reading.Problems.Where(p => p.Path == Full(path)).Select(p => p.Message)] : [];

    /// <summary>How much is wrong in a stage, or under a place of it.</summary>
    public int ProblemsUnder(string path) =>
        Checked
            ? Reading.Problems.Count(p =>
                p.Path == path
                || p.Path.StartsWith(path + ".", StringComparison.Ordinal)
                || p.Path.StartsWith(path + "[", StringComparison.Ordinal)
            )
            : 0;

    /// <summary>A path as it is in the whole route.</summary>
    public string Full(string path) => Open == DraftActs.Head ? path : $"stages[{Open.ToString(CultureInfo.InvariantCulture)}].{path}";

    private async Task<bool> ProposedAsync(CancellationToken cancellation)
    {
        var latest = (await RevisionsAsync(cancellation)).OrderByDescending(r => r.Revision).FirstOrDefault();
        var sameRoute = Reading.Route is not { } route || (route.Model == Model && route.Kind == Kind);
        if (sameRoute && latest is not null && latest.Revision != Base)
        {
            return Refuse(
                Domain.Work.Refusal.Conflict(SetupSentences.AnotherRevisionWasProposed(latest.Revision, latest.Author, Base + 1))
            );
        }

        return Reading.Problems.Count > 0
            ? Refuse(Domain.Work.Refusal.Invalid("text", SetupSentences.RouteHasProblems(Reading.Problems.Count)))
            : await RecordAsync([Role.Lead], c => load.RunAsync(Text, Actor.PersonId, c));
    }

    private async Task ShowAsync(CancellationToken cancellation)
    {
        Reading = RouteText.Read(Text, StageMethods.Requirements);
        Warnings = await kinds.WarningsOfAsync(Reading.Named, cancellation);
        await choices.LoadAsync(cancellation);
    }

    private void TakeOver(DraftMap draft)
    {
        var typed = Request
            .Form.Where(f => f.Key.StartsWith(Prefix, StringComparison.Ordinal))
            .ToDictionary(f => f.Key[Prefix.Length..], f => f.Value.ToString());
        var stages = draft.Items("stages");
        if (Open >= 0 && Open < stages.Count && typed.ContainsKey("code"))
        {
            var stage = DraftForm.Read(DraftShape.Stages, typed);
            stage.Comments = stages[Open].Comments;
            stages[Open] = stage;
        }
        else if (Open == DraftActs.Head)
        {
            var head = DraftForm.Read(DraftShape.Head, typed);
            foreach (var key in EditedInHead.Where(typed.ContainsKey))
            {
                draft[key] = head[key];
            }
        }
    }

    private void Number(DraftMap draft)
    {
        draft["revision"] = (Base + 1).ToString(CultureInfo.InvariantCulture);
        draft["author"] = Actor.Badge;
        draft["approvedBy"] = "";
        draft["reason"] = "";
        draft["effectiveFrom"] = calendar.DayOf(Now).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
    }

    private DraftMap Blank(string title, string prefix)
    {
        var draft = new DraftMap
        {
            ["model"] = Model,
            ["kind"] = Kind,
            ["title"] = title,
            ["serialPrefix"] = prefix.ToUpperInvariant(),
        };
        DraftActs.Do(draft, DraftActs.Head, "add:0", texts["Edit.FirstStage"]);
        return draft;
    }

    private Task<List<RouteRevision>> RevisionsAsync(CancellationToken cancellation) =>
        db.Set<RouteRevision>().AsNoTracking().Where(r => r.Model == Model && r.Kind == Kind).ToListAsync(cancellation);
}
