using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.InstrumentTokens;

/// <summary>The tokens of one instrument: make one, which is shown once, and revoke those that are no longer wanted.</summary>
[Authorize(Roles = nameof(Role.Lead))]
public sealed class InstrumentTokensPage(
    ListTokens list,
    IssueToken issue,
    RevokeToken revoke,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    [FromRoute]
    public string Code { get; set; } = "";

    public IReadOnlyList<ListTokens.Row> Rows { get; private set; } = [];

    /// <summary>The token that was just made; it is on this one answer and nowhere else.</summary>
    public string? Secret { get; private set; }

    public async Task<IActionResult> OnGetAsync() => await LoadAsync() ? Page() : NotFound();

    public async Task<IActionResult> OnPostMakeAsync(string? title)
    {
        Secret = await RecordAsync([Role.Lead], c => issue.RunAsync(Code, new(title ?? ""), Actor, c))
            ? Recorded<IssueToken.Output>().Token
            : null;
        Response.Headers.CacheControl = "no-store";
        return await LoadAsync() ? Page() : NotFound();
    }

    public async Task<IActionResult> OnPostRevokeAsync(Guid id, string? reason)
    {
        if (await RecordAsync([Role.Lead], c => revoke.RunAsync(Code, id, new(reason ?? ""), Actor, c)))
        {
            Done = texts["Tokens.RevokedNow"];
            return RedirectToPage(new { Code });
        }

        return await LoadAsync() ? Page() : NotFound();
    }

    private async Task<bool> LoadAsync()
    {
        if (await list.RunAsync(Code, HttpContext.RequestAborted) is not { } rows)
        {
            return false;
        }

        (Code, Rows) = (Code.Trim().ToUpperInvariant(), rows);
        return true;
    }
}
