using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Codes;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Features.Access;

/// <summary>
/// Sign in with badge and PIN, by keyboard or scanner: a scanner's Enter after the badge brings the page back with the PIN asked.
/// </summary>
[AllowAnonymous]
public sealed class SignInPage(
    SignIn use,
    FirstAccountKey firstAccount,
    SessionCookie cookie,
    Display display,
    IStringLocalizer<Texts> texts
) : PageModel
{
    [BindProperty]
    public string? Badge { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? ReturnTo { get; set; }

    // Never a bound property: what is bound can be shown again.
    private string? Pin => Request.Form["Pin"];

    /// <summary>What is wrong, in words.</summary>
    public string? Problem { get; private set; }

    /// <summary>True when the badge is there and the PIN is what is missing.</summary>
    public bool AsksPin { get; private set; }

    /// <summary>True in an empty store, where nobody can sign in.</summary>
    public bool NobodyKnown { get; private set; }

    public async Task OnGetAsync() => NobodyKnown = await firstAccount.IsNeededAsync(HttpContext.RequestAborted);

    public async Task<IActionResult> OnPostAsync()
    {
        Problem = ReadBadge();
        AsksPin = Problem is null && !string.IsNullOrWhiteSpace(Badge);
        if (!AsksPin || string.IsNullOrEmpty(Pin))
        {
            return Page();
        }

        var outcome = await use.RunAsync(new(Badge!, Pin.Trim()), HttpContext.RequestAborted);
        if (outcome.Session is { } session)
        {
            await cookie.ReplaceAsync(HttpContext, session);
            return LocalRedirect(Url.IsLocalUrl(ReturnTo) ? ReturnTo : "/");
        }

        Response.StatusCode = outcome.Throttled is null ? 401 : 429;
        Problem =
            outcome.Throttled is { } throttled ? texts[throttled.PageKey(), display.ClockText(throttled.Until)]
            : outcome.Deactivated is { } because ? AccessSentences.AccessWasEnded(because)
            : texts["SignIn.Wrong"];
        return Page();
    }

    private string? ReadBadge()
    {
        switch (PrintedCode.Read(Badge))
        {
            case CodeReading.Good { Code: { Kind: CodeKind.Badge } code }:
                Badge = code.Id;
                return null;
            case CodeReading.Good:
                return texts["SignIn.NotABadge"];
            case CodeReading.WrongCheck:
                return texts["SignIn.BadCode"];
            default:
                return null;
        }
    }
}
