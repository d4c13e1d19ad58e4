using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace Traceability.Web.Features.Public.Docs;

/// <summary>The HTTP interface, to be read and tried. Made from the OpenAPI document; docs.js sends the calls.</summary>
[AllowAnonymous]
public sealed class DocsPage(ApiGuide guide) : PageModel
{
    public IReadOnlyList<IGrouping<string, ApiCall>> Subjects { get; private set; } = [];

    public async Task OnGetAsync() => Subjects = await guide.ReadAsync(HttpContext.RequestAborted);
}
