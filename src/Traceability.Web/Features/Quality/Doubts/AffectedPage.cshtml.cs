using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Access;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Doubts;

/// <summary>What was measured with an instrument while it was in doubt, and the form by which the quality lead decides on it.</summary>
[Authorize(Roles = $"{nameof(Role.Quality)},{nameof(Role.Service)}")]
public sealed class AffectedPage(
    InstrumentQuery instruments,
    DoubtfulPartsQuery query,
    DecideAffected decide,
    NameQuery names,
    PinSignature pins,
    WorkshopCalendar calendar,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    private IReadOnlyDictionary<Guid, Who> people = new Dictionary<Guid, Who>();

    [FromRoute]
    public string Code { get; set; } = "";

    /// <summary>The spans in which it is in doubt, oldest first.</summary>
    public IReadOnlyList<DoubtfulSpan> Spans { get; private set; } = [];

    public IReadOnlyList<DoubtfulMeasurement> Rows { get; private set; } = [];

    public bool MayDecide => May(Role.Quality) && Rows.Any(r => r.Open);

    protected override IReadOnlyCollection<string> LongFields => ["parts"];

    public async Task<IActionResult> OnGetAsync() => await LoadAsync() ? Page() : NotFound();

    public async Task<IActionResult> OnPostAsync(string[]? parts, string? kind, string? reason, string? aloneBecause)
    {
        var pin = Request.Form[PinSignature.Field].ToString();
        var recorded =
            Enum.GetValues<DoubtDecisionKind>().Where(k => WordOf(k) == kind).Cast<DoubtDecisionKind?>().FirstOrDefault() is not { } known
                ? Refuse(Refusal.Invalid("kind", texts["Doubt.SayWhat"]))
            : May(Role.Quality) && await pins.UnprovenAsync(Actor, pin, HttpContext.RequestAborted) is { } unproven ? Refuse(unproven)
            : await RecordAsync(
                [Role.Quality],
                c => decide.RunAsync(Code, new(parts ?? [], known, reason ?? "", pin), Actor.Alone(aloneBecause), c)
            );
        if (recorded)
        {
            Done = texts["Doubt.Done", Recorded<DecideAffected.Output>().Parts.Count];
            return RedirectToPage(new { Code });
        }

        return await LoadAsync() ? Page() : NotFound();
    }

    /// <summary>A span in words: from when until when, and why.</summary>
    public string SentenceOf(DoubtfulSpan span) => DoubtSentence.Of(Code, span, calendar);

    /// <summary>True when the box of a part was ticked in a form that was refused.</summary>
    public bool WasChosen(string serial) => RefusedIn("decide") is not null && Request.Form["parts"].Contains(serial);

    public string NameOf(Guid person) => people.GetValueOrDefault(person, Who.Nobody).Name;

    /// <summary>The word that the form sends for a decision.</summary>
    public static string WordOf(DoubtDecisionKind kind) => kind.ToString().ToLowerInvariant();

    private async Task<bool> LoadAsync()
    {
        if (await instruments.FindAsync([Code.Trim().ToUpperInvariant()], HttpContext.RequestAborted) is not [var found])
        {
            return false;
        }

        Code = found.Instrument.Code;
        Spans = DoubtfulSpan.Of(found, calendar);
        Rows = await query.RunAsync(found, DecideAffected.Most, HttpContext.RequestAborted);
        people = await names.PeopleAsync(Rows.Select(r => r.Decision?.By).OfType<Guid>(), HttpContext.RequestAborted);
        return true;
    }
}
