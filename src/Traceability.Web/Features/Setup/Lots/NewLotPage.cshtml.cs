using System.Globalization;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Setup.Kinds;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Lots;

/// <summary>Takes a lot in, with what the supplier says of it.</summary>
[Authorize(Roles = $"{nameof(Role.Quality)},{nameof(Role.Importer)}")]
public sealed class NewLotPage(
    ReceiveLot receive,
    WorkshopCalendar calendar,
    KindDoor kinds,
    WorkshopContext db,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    private static readonly Role[] Receivers = [Role.Quality, Role.Importer];

    /// <summary>What the form holds, as typed.</summary>
    public sealed record Form(
        string? Kind,
        string? Supplier,
        string? SupplierLot,
        string? Quantity,
        string? Unit,
        string? Number,
        DateOnly? ReceivedOn,
        DateOnly? ExpiresOn,
        string? BaseThicknessUm,
        string? MetalThicknessNm,
        string? SheetResistanceOhm,
        DateTime? MixedAt,
        string? PotLifeMinutes,
        string? Confirm
    );

    /// <summary>The kinds that may be chosen.</summary>
    public IReadOnlyList<(string Value, string Words)> Kinds { get; private set; } = [];

    /// <summary>Suppliers of before, so that one is written the same every time.</summary>
    public IReadOnlyList<string> Suppliers { get; private set; } = [];

    /// <summary>True when a supplier lot that came before has to be confirmed.</summary>
    public bool AsksAgain => RefusedIn("lot")?.Errors.ContainsKey("confirm") == true;

    public Task OnGetAsync() => LoadAsync();

    public async Task<IActionResult> OnPostAsync(Form form)
    {
        var (kind, field, sure) = KindField.Read(Request.Form, "kind");
        var asked = await kinds.AskAsync(KindOf.Lot, field, kind, sure, HttpContext.RequestAborted);
        if (
            (Read(form with { Kind = kind }, out var input) ?? asked) is { } wrong
                ? !Refuse(wrong)
                : !await RecordAsync(Receivers, c => receive.RunAsync(input!, Actor, c))
        )
        {
            await LoadAsync();
            return Page();
        }

        var number = Recorded<LotAnswer>().Number;
        Done = texts["NewLot.Done", number];
        return LocalRedirect($"/lots/{number}");
    }

    private async Task LoadAsync()
    {
        Kinds = await kinds.OptionsAsync(KindOf.Lot, HttpContext.RequestAborted);
        Suppliers = await db.Kept<Lot>().Select(l => l.Supplier).Distinct().Order().ToListAsync(HttpContext.RequestAborted);
    }

    private Refusal? Read(Form form, out ReceiveLot.Input? input)
    {
        var reader = new NumberReader();
        var film =
            form.Kind?.Trim() == Lot.FilmKind || (form.BaseThicknessUm ?? form.MetalThicknessNm ?? form.SheetResistanceOhm) is not null
                ? new FilmInput(
                    reader.Need(nameof(form.BaseThicknessUm), form.BaseThicknessUm),
                    reader.Need(nameof(form.MetalThicknessNm), form.MetalThicknessNm),
                    reader.May(nameof(form.SheetResistanceOhm), form.SheetResistanceOhm)
                )
                : null;
        input = new(
            form.Kind?.Trim() ?? "",
            form.Supplier ?? "",
            form.SupplierLot ?? "",
            reader.Need(nameof(form.Quantity), form.Quantity),
            form.Unit ?? "",
            form.Number,
            form.ReceivedOn is { } day && day != calendar.DayOf(Now) ? calendar.NoonOf(day) : null,
            form.ExpiresOn is { } last ? calendar.NoonOf(last) : null,
            film,
            form.MixedAt is { } mixed ? AtLocal(mixed) : null,
            int.TryParse(form.PotLifeMinutes, CultureInfo.InvariantCulture, out var minutes) ? minutes : null,
            Confirm: form.Confirm == "true"
        );
        return form.PotLifeMinutes is not null && input.PotLifeMinutes is null
            ? Refusal.Invalid("potLifeMinutes", SetupSentences.PotLifeIsAWholeNumber)
            : reader.Refusal;
    }

    private DateTimeOffset AtLocal(DateTime local) =>
        new DateTimeOffset(DateTime.SpecifyKind(local, DateTimeKind.Unspecified), calendar.Zone.GetUtcOffset(local)).ToUniversalTime();
}
