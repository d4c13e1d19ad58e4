using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Web.Features.Setup.Kinds;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Service.Returns;

/// <summary>One return: complaint, findings, what was done.</summary>
[Authorize(Roles = $"{nameof(Role.Service)},{nameof(Role.Quality)}")]
public sealed class ReturnPage(
    ReadReturn read,
    RecordFinding finding,
    RecordOutcome outcome,
    CloseReturn close,
    KindDoor kinds,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    [FromRoute]
    public Guid Id { get; set; }

    public ReturnRow Return { get; private set; } = null!;

    /// <summary>The codes of what may be found.</summary>
    public IReadOnlyList<(string Value, string Words)> Findings { get; private set; } = [];

    /// <summary>How it may come out.</summary>
    public static IReadOnlyList<ReturnOutcomeKind> Kinds { get; } = Enum.GetValues<ReturnOutcomeKind>();

    public bool MayWork => Return.Open && May(Role.Service);

    public async Task<IActionResult> OnGetAsync() => await LoadAsync() ? Page() : NotFound();

    public async Task<IActionResult> OnPostFindingAsync(string? description)
    {
        var (code, field, sure) = KindField.Read(Request.Form, "code");
        var asked = await kinds.AskAsync(KindOf.Finding, field, code, sure, HttpContext.RequestAborted);
        return await AnswerAsync(
            asked is not null
                ? Refuse(asked)
                : await RecordAsync([Role.Service], c => finding.RunAsync(Id, new(code, description ?? ""), Actor, c)),
            texts["Return.Found"]
        );
    }

    public async Task<IActionResult> OnPostOutcomeAsync(string? kind, string? reason) =>
        await AnswerAsync(
            Kinds.Where(k => Words.Of(k) == kind).Cast<ReturnOutcomeKind?>().FirstOrDefault() is { } known
                ? await RecordAsync([Role.Service], c => outcome.RunAsync(Id, new(known, reason ?? ""), Actor, c))
                : Refuse(Refusal.Invalid("kind", ServiceSentences.SayHowItCameOut)),
            texts["Return.CameOut"]
        );

    public async Task<IActionResult> OnPostCloseAsync(string? action) =>
        await AnswerAsync(
            await RecordAsync([Role.Service], c => close.RunAsync(Id, new(action ?? ""), Actor, c)),
            texts["Return.ClosedNow"]
        );

    private async Task<IActionResult> AnswerAsync(bool recorded, string done)
    {
        if (recorded)
        {
            Done = done;
            return RedirectToPage(new { Id });
        }

        return await LoadAsync() ? Page() : NotFound();
    }

    private async Task<bool> LoadAsync()
    {
        if (await read.FindAsync(Id, HttpContext.RequestAborted) is not { } found)
        {
            return false;
        }

        Return = found;
        Findings = await kinds.OptionsAsync(KindOf.Finding, HttpContext.RequestAborted);
        return true;
    }
}
