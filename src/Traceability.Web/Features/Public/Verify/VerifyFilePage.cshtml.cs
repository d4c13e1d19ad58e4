using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Codes;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Public.Verify;

/// <summary>Checks a certificate by its number or by the file itself. The file is looked at and not kept.</summary>
[AllowAnonymous]
[OpenBody(VerifyFile.MaxBytes + (64 * 1024))]
public sealed class VerifyFilePage(VerifyFile use, IStringLocalizer<DeskTexts> texts) : PageModel
{
    public Verified? Verified { get; private set; }

    /// <summary>What was wrong with what was sent.</summary>
    public string? Problem { get; private set; }

    public IActionResult OnGet(string? id) =>
        string.IsNullOrWhiteSpace(id) ? Page() : LocalRedirect($"/verify/{Uri.EscapeDataString(CertificateNumber.In(id) ?? id.Trim())}");

    public async Task<IActionResult> OnPostAsync(IFormFile? file)
    {
        Problem =
            file is null or { Length: 0 } ? texts["VerifyFile.Choose"].Value
            : file.Length > VerifyFile.MaxBytes ? texts["VerifyFile.TooLarge"].Value
            : null;
        if (Problem is not null)
        {
            Response.StatusCode = file is { Length: > 0 } ? 413 : 400;
            return Page();
        }

        await using var bytes = file!.OpenReadStream();
        Verified = await use.RunAsync(bytes, HttpContext.RequestAborted);
        return Page();
    }
}
