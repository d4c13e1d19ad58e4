using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Public.Problems;

/// <summary>What a kind of problem means and what to do: the page at the address that its documents give as their type.</summary>
[AllowAnonymous]
public sealed class ProblemKindPage : PageModel
{
    public ProblemKind Kind { get; private set; } = null!;

    public string Title => ProblemTexts.TitleOf(Kind);

    public string Meaning => ProblemTexts.MeaningOf(Kind);

    public string Remedy => ProblemTexts.RemedyOf(Kind);

    public IActionResult OnGet(string code)
    {
        if (ProblemKinds.Find(code) is not { } kind)
        {
            return NotFound();
        }

        Kind = kind;
        return Page();
    }
}
