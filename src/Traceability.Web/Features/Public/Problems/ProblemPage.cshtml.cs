using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace Traceability.Web.Features.Public.Problems;

/// <summary>What a person sees in place of a page that cannot be shown: what happened, what was kept, what to do.</summary>
[AllowAnonymous]
[IgnoreAntiforgeryToken]
public sealed class ProblemPage : PageModel
{
    private static readonly int[] Known = [400, 403, 404, 409, 413, 429, 500, 503];

    [FromRoute]
    public int Status { get; set; }

    /// <summary>The status that has words; others are told as the nearest of them.</summary>
    public int Shown =>
        Known.Contains(Status) ? Status
        : Status >= 500 ? 500
        : 400;

    public void OnGet() => Response.StatusCode = Shown;

    public void OnPost() => Response.StatusCode = Shown;
}
