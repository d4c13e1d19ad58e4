using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Features.Access;

/// <summary>Ends the session. A form does it, never a link: no other site can sign anybody out.</summary>
public sealed class SignOutPage(SessionCookie cookie, IStringLocalizer<Texts> texts) : WorkshopPage
{
    public async Task<IActionResult> OnPostAsync()
    {
        await cookie.EndAsync(HttpContext);
        Done = texts["SignOut.Done"];
        return LocalRedirect("/sign-in");
    }
}
