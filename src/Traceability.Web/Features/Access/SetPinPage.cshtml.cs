using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Features.Access;

/// <summary>Where a person sets their PIN, with a one-time code or the present PIN.</summary>
[AllowAnonymous]
public sealed class SetPinPage(SetPin use, Display display, IStringLocalizer<Texts> texts) : PageModel
{
    [BindProperty]
    public string? Badge { get; set; }

    /// <summary>What is wrong, in words.</summary>
    public string? Problem { get; private set; }

    /// <summary>The one-time code of the link that led here.</summary>
    public string? FromLink { get; private set; }

    public void OnGet(string? badge, string? code)
    {
        (Badge, FromLink) = (badge, code);
        Response.Headers.CacheControl = "no-store";
    }

    public async Task<IActionResult> OnPostAsync()
    {
        // Read from the form and not bound: what is bound can be shown again.
        var (known, pin, again) = (Sent("Known"), Sent("NewPin"), Sent("Again"));
        if (pin != again)
        {
            return Refuse(400, texts["SetPin.NotTheSame"]);
        }

        var isPin = PinDigits.Are(known);
        var outcome = await use.RunAsync(new(Badge ?? "", pin, isPin ? null : known, isPin ? known : null), HttpContext.RequestAborted);
        if (outcome.Written is null)
        {
            return outcome.Throttled is { } throttled
                ? Refuse(429, texts[throttled.PageKey(), display.ClockText(throttled.Until)])
                : Refuse(401, texts["SetPin.Wrong"]);
        }

        if (outcome.Written.Refusal is { } refusal)
        {
            return Refuse(refusal.Kind == RefusalKind.Invalid ? 400 : 409, refusal.Message);
        }

        TempData["Done"] = texts["SetPin.Done"].Value;
        return LocalRedirect("/sign-in");
    }

    private string Sent(string field) => Request.Form[field].ToString().Trim();

    private PageResult Refuse(int status, string problem)
    {
        (Problem, Response.StatusCode) = (problem, status);
        return Page();
    }
}
