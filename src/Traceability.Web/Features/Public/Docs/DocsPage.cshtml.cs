using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Public.Docs;

/// <summary>The HTTP interface, to be read and tried. Made from the OpenAPI document; docs.js sends the calls.</summary>
[AllowAnonymous]
public sealed class DocsPage(ApiGuide guide) : PageModel
{
    public IReadOnlyList<IGrouping<string, ApiCall>> Subjects { get; private set; } = [];

    /// <summary>Every kind of problem with its name.</summary>
    public IReadOnlyList<(ProblemKind Kind, string Title)> Problems { get; } =
    [.. ProblemKinds.All.Select(k => (k, ProblemTexts.TitleOf(k)))];

    public async Task OnGetAsync() => Subjects = await guide.ReadAsync(HttpContext.RequestAborted);
}
