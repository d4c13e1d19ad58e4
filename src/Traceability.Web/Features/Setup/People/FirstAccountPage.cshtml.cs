using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Work;
using Traceability.Web.Features.Access;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Features.Setup.People;

/// <summary>Makes the workshop lead's account from the link that the service printed. The key in the link is the right to do so.</summary>
[AllowAnonymous]
public sealed class FirstAccountPage(MakeFirstAccount use, FirstAccountKey keys, IStringLocalizer<Texts> texts) : PageModel
{
    /// <summary>The key from the link.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Key { get; set; }

    [BindProperty]
    public string? Badge { get; set; }

    [BindProperty]
    public string? Name { get; set; }

    /// <summary>False once somebody is known here.</summary>
    public bool Needed { get; private set; }

    public Refusal? Refusal { get; private set; }

    public async Task OnGetAsync() => Needed = await keys.IsNeededAsync(HttpContext.RequestAborted);

    public async Task<IActionResult> OnPostAsync()
    {
        // The PIN is read from the form and not bound: what is bound can be shown again.
        string? pin = Request.Form["Pin"];
        var written = await use.RunAsync(new(Key ?? "", Badge ?? "", Name ?? "", pin ?? ""), HttpContext.RequestAborted);
        if (written.Refusal is null)
        {
            TempData["Done"] = texts["FirstAccount.Done"].Value;
            return LocalRedirect("/sign-in");
        }

        Refusal = written.Refusal;
        Response.StatusCode = Refusal.Kind switch
        {
            RefusalKind.Invalid => 400,
            RefusalKind.Forbidden => 403,
            RefusalKind.TooMany => 429,
            _ => 409,
        };
        await OnGetAsync();
        return Page();
    }
}
