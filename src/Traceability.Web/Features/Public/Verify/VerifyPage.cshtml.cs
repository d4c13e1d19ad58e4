using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace Traceability.Web.Features.Public.Verify;

/// <summary>Says to anybody whether a certificate is genuine and current; the address is printed on it.</summary>
[AllowAnonymous]
public sealed class VerifyPage(VerifyCertificate use) : PageModel
{
    public Verified Verified { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(string certificateId)
    {
        Verified = await use.ByIdAsync(certificateId, HttpContext.RequestAborted);
        Response.StatusCode = Verified.Genuine ? 200 : 404;
        return Page();
    }
}
