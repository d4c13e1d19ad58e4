using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work.Delivery;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Quality.Shipments;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.Certificates;

/// <summary>A unit's birth certificate: what is still missing, its revisions, and the way out of the workshop.</summary>
public sealed class CertificatePage(
    DossierReader dossiers,
    InsideQuery inside,
    IssueCertificate issue,
    IssuedCertificates certificates,
    ShipUnit ship,
    WorkBench bench,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    [FromRoute]
    public string Serial { get; set; } = "";

    public Dossier Unit { get; private set; } = null!;

    /// <summary>What the unit is now.</summary>
    public StandingAnswer Standing => bench.AnswerOf(Unit).Standing;

    /// <summary>What still stands between the unit and its certificate.</summary>
    public IReadOnlyList<GateCheck> Missing { get; private set; } = [];

    public IReadOnlyList<IssuedCertificate> Revisions { get; private set; } = [];

    /// <summary>What has become of the latest revision; null when there is none.</summary>
    public CertificateCurrency? Currency { get; private set; }

    /// <summary>True when the latest revision speaks of the unit as it is now.</summary>
    public bool Current => Currency == CertificateCurrency.Current;

    public bool IsUnit => Unit.Part.Kind == PartKinds.Unit;

    public bool MayIssue => May(Role.Quality) && Missing.Count == 0;

    public bool MayShip => MayIssue && Current && Unit.Shipped is null;

    public async Task<IActionResult> OnGetAsync() => await LoadAsync() ? Page() : NotFound();

    public async Task<IActionResult> OnPostIssueAsync()
    {
        if (!await RecordAsync([Role.Quality], c => issue.RunAsync(Serial, new(), Actor, c)))
        {
            return await LoadAsync() ? Page() : NotFound();
        }

        Done = texts["Certificate.Issued", Recorded<IssueCertificate.Output>().Revision];
        return RedirectToPage(new { Serial });
    }

    public async Task<IActionResult> OnPostShipAsync(string? customerReference)
    {
        if (!await RecordAsync([Role.Quality], c => ship.RunAsync(Serial, new(customerReference), Actor, c)))
        {
            return await LoadAsync() ? Page() : NotFound();
        }

        Done = texts["Certificate.ShippedNow", Serial];
        return RedirectToPage(new { Serial });
    }

    private async Task<bool> LoadAsync()
    {
        if (await PartLookup.FindAsync(Serial, dossiers, HttpContext.RequestAborted) is not { } unit)
        {
            return false;
        }

        (Unit, Serial) = (unit, unit.Part.Serial);
        Missing = ReleaseUnit.MissingForCertificate(unit);
        Revisions = await certificates.OfAsync(Serial, HttpContext.RequestAborted) ?? [];
        Currency = unit.Of<Certificate>().LastOrDefault() is { } latest
            ? ReleaseUnit.CurrencyOf(unit, latest, await inside.LastWorkAsync(unit.Part.Id, HttpContext.RequestAborted))
            : null;
        return true;
    }
}
