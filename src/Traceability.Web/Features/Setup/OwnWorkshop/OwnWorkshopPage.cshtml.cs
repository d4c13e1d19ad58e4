using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Web.Features.Shared;
using Traceability.Web.Hosting;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.OwnWorkshop;

/// <summary>What the workshop says about itself, the form to say it anew, and what was said before by whom.</summary>
[Authorize(Roles = nameof(Role.Lead))]
public sealed class OwnWorkshopPage(
    ReadWorkshop read,
    ReviseWorkshop revise,
    SetWorkshopLogo setLogo,
    ListWorkshopRevisions revisions,
    CurrentWorkshop current,
    IStringLocalizer<OwnWorkshopTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    /// <summary>What the form holds, as typed.</summary>
    public sealed record Form(
        string? Name,
        string? Address,
        string? Contact,
        string? TimeZone,
        string? PublicUrl,
        string? Language,
        string? WarrantyTerms,
        bool Suppliers,
        bool LotNumbers,
        bool Reworks,
        NamesOnCertificates NamesOnCertificates,
        bool SingleHanded,
        string? Reason,
        int BasedOn
    );

    public WorkshopAnswer Workshop { get; private set; } = null!;

    /// <summary>All revisions, newest first, with what each changed.</summary>
    public IReadOnlyList<WorkshopChange> History { get; private set; } = [];

    /// <summary>What somebody else changed while this form was being filled in; empty when nobody did.</summary>
    public IReadOnlyList<WorkshopChange> Meanwhile { get; private set; } = [];

    public static IReadOnlyList<string> Zones { get; } = [.. TimeZones.All.Order(StringComparer.Ordinal)];

    public static IReadOnlyList<string> Languages { get; } = [.. WorkshopLanguage.WithWords.Order(StringComparer.Ordinal)];

    /// <summary>The revision in force as it stands, without what was set over it.</summary>
    public WorkshopRevision? InForce { get; private set; }

    public async Task OnGetAsync() => await LoadAsync();

    public async Task<IActionResult> OnPostAsync(Form form)
    {
        var input = new ReviseWorkshop.Input(
            form.Name ?? "",
            form.TimeZone ?? "",
            form.Language ?? "",
            new(form.Suppliers, form.LotNumbers, form.Reworks),
            form.Address,
            form.Contact,
            form.PublicUrl,
            form.WarrantyTerms,
            form.NamesOnCertificates,
            form.SingleHanded,
            form.Reason,
            form.BasedOn
        );
        if (await RecordAsync([Role.Lead], c => revise.RunAsync(input, Actor, c)))
        {
            Done = texts["Saved", Recorded<WorkshopAnswer>().Revision];
            return LocalRedirect("/setup/workshop");
        }

        await LoadAsync();
        Meanwhile = Refusal?.Code == RefusalCode.ChangedMeanwhile ? [.. History.Where(h => h.Revision > form.BasedOn)] : [];
        return Page();
    }

    public async Task<IActionResult> OnPostLogoAsync(IFormFile? logo)
    {
        var bytes = logo is null ? [] : await ReadAsync(logo);
        if (bytes is null ? !Refuse(LogoBytes.TooLarge) : !await RecordAsync([Role.Lead], c => setLogo.RunAsync(bytes, Actor, c)))
        {
            await LoadAsync();
            return Page();
        }

        Done = texts["LogoTaken"];
        return LocalRedirect("/setup/workshop");
    }

    public async Task<IActionResult> OnPostNoLogoAsync()
    {
        if (!await RecordAsync([Role.Lead], c => setLogo.RemoveAsync(Actor, c)))
        {
            await LoadAsync();
            return Page();
        }

        Done = texts["LogoRemoved"];
        return LocalRedirect("/setup/workshop");
    }

    /// <summary>The line at a field that says that an environment variable goes before it; null when none does.</summary>
    public string? Override(string field) =>
        Workshop.Overrides.FirstOrDefault(o => o.Field == field) is { } set
            ? texts["Override", set.Setting, ValueOf(field) ?? ""].Value
            : null;

    private string? ValueOf(string field) =>
        field switch
        {
            "name" => current.Set.Name,
            "timeZone" => current.Set.TimeZone,
            "publicUrl" => current.Set.PublicUrl,
            _ => current.Set.Language,
        };

    private async Task<byte[]?> ReadAsync(IFormFile file)
    {
        await using var stream = file.OpenReadStream();
        return await LogoBytes.ReadAsync(stream, HttpContext.RequestAborted);
    }

    private async Task LoadAsync()
    {
        var cancellation = HttpContext.RequestAborted;
        Workshop = await read.RunAsync(cancellation);
        History = await revisions.AllAsync(cancellation);
        InForce = await revisions.LatestAsync(cancellation);
    }
}
