using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Access;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Nonconformities;

/// <summary>One nonconformity: first what a decision would touch, then the decision, signed with the PIN.</summary>
public sealed class NonconformityPage(
    WorkshopContext db,
    DossierReader dossiers,
    NameQuery names,
    DecideNonconformity decide,
    PinSignature pins,
    PermitQuery permits,
    WorkshopCalendar calendar,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    [FromRoute]
    public Guid Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public DispositionKind? Kind { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? ReturnTo { get; set; }

    public Nonconformity Nonconformity { get; private set; } = null!;

    public Dossier Dossier { get; private set; } = null!;

    /// <summary>What the part is now.</summary>
    public StandingAnswer Standing => StandingAnswer.Of(Domain.Gates.Standings.Standing.Of(Dossier, new(Now, calendar)));

    public Disposition? Decision { get; private set; }

    public bool Open { get; private set; }

    public bool MayDecide => Open && May(Role.Quality);

    /// <summary>Set once a kind was chosen.</summary>
    public DecisionPreview? Preview { get; private set; }

    /// <summary>Permits on which a concession may rest now.</summary>
    public IReadOnlyList<PermitStanding> Permits { get; private set; } = [];

    public Func<Guid, Who> NameOf { get; private set; } = null!;

    /// <summary>True when this person built the part and the workshop works single-handed.</summary>
    public bool Alone => Kind is { } kind && Dispositions.NeedOf(Dossier, kind, Actor) == SecondPersonNeed.Reason;

    /// <summary>True for kinds that send the part back to a stage.</summary>
    public bool Returns => Kind is DispositionKind.Rework or DispositionKind.Repair;

    /// <summary>Where rework would return to when nothing else is chosen: what the route says, else the stage that failed.</summary>
    public string? UsualReturn => Nonconformity.Stage is { } failed ? Dossier.Route.Find(failed)?.ReworkReturnsTo ?? failed : null;

    public async Task<IActionResult> OnGetAsync() => await LoadAsync() ? Page() : NotFound();

    public async Task<IActionResult> OnPostAsync(string? reason, string? limitedTo, string? permit, string? aloneBecause)
    {
        var pin = Request.Form[PinSignature.Field].ToString();
        var wanted = Kind is { } kind
            ? new DecideNonconformity.Input(kind, reason ?? "", pin, Returns ? ReturnTo : null, limitedTo, Permit: permit)
            : null;
        var recorded =
            wanted is null ? Refuse(Refusal.Invalid("kind", texts["Nc.ChooseKind"]))
            : May(Role.Quality) && await pins.UnprovenAsync(Actor, pin, HttpContext.RequestAborted) is { } unproven ? Refuse(unproven)
            : await RecordAsync([Role.Quality], c => decide.RunAsync(Id, wanted, Actor.Alone(aloneBecause), c));
        if (!await LoadAsync())
        {
            return NotFound();
        }

        if (!recorded)
        {
            return Page();
        }

        Done = texts["Nc.Done", Dossier.Part.Serial];
        return LocalRedirect($"/parts/{Dossier.Part.Serial}");
    }

    private async Task<bool> LoadAsync()
    {
        var cancellation = HttpContext.RequestAborted;
        if (
            await db.Set<Nonconformity>().AsNoTracking().FirstOrDefaultAsync(n => n.Id == Id, cancellation) is not { } found
            || await dossiers.LoadAsync(found.PartId, cancellation) is not { } dossier
        )
        {
            return false;
        }

        (Nonconformity, Dossier) = (found, dossier);
        Decision = dossier.Of<Disposition>().FirstOrDefault(d => d.NonconformityId == Id);
        Open = dossier.OpenNonconformities().Any(n => n.Id == Id);
        Preview =
            MayDecide && Kind is { } kind
                ? DecisionPreview.Of(dossier, Id, kind, Returns ? ReturnTo : null, Actor, new(Now, calendar))
                : null;
        Permits =
            MayDecide && Kind == DispositionKind.Concession
                ? [.. (await permits.FindAsync(null, cancellation)).Where(p => p.StateOn(calendar.DayOf(Now)) == "open")]
                : [];
        var people = await names.PeopleAsync(dossier.Facts.Select(f => f.By), cancellation);
        NameOf = id => people.GetValueOrDefault(id, Who.Nobody);
        return true;
    }
}
