using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Service.Returns;

/// <summary>A unit came back: which, and what is wrong with it in the customer's words.</summary>
[Authorize(Roles = nameof(Role.Service))]
public sealed class NewReturnPage(OpenReturn use, IStringLocalizer<DeskTexts> texts, Writes writes) : DeskPage(writes)
{
    [BindProperty(SupportsGet = true)]
    public string? Serial { get; set; }

    public void OnGet() { }

    public async Task<IActionResult> OnPostAsync(string? complaint, string? customerReference)
    {
        if (!await RecordAsync([Role.Service], c => use.RunAsync(new(Serial ?? "", complaint ?? "", customerReference), Actor, c)))
        {
            return Page();
        }

        Done = texts["NewReturn.Done"];
        return LocalRedirect($"/returns/{Recorded<ReturnStep>().Return}");
    }
}
