using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Codes;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Service.Search;

/// <summary>What the look-up box found. A printed code, or a serial typed whole, leads straight to its page.</summary>
public sealed class SearchPage(LookUp use, IStringLocalizer<DeskTexts> texts, Writes writes) : DeskPage(writes)
{
    private const int Longest = 100;

    [BindProperty(SupportsGet = true, Name = "q")]
    public string? Query { get; set; }

    public IReadOnlyList<Found> Hits { get; private set; } = [];

    /// <summary>What was wrong with the question.</summary>
    public string? Problem { get; private set; }

    public async Task<IActionResult> OnGetAsync()
    {
        var text = Asked();
        if (text is null)
        {
            return Page();
        }

        Hits = await use.RunAsync(text, HttpContext.RequestAborted);
        var exact = Hits.Where(h => h.Code.Equals(text, StringComparison.OrdinalIgnoreCase)).Select(UrlOf).Distinct().ToList();
        return exact is [var only] ? LocalRedirect(only) : Page();
    }

    /// <summary>Where a hit leads.</summary>
    public static string UrlOf(Found hit) => hit.Serial is { } serial ? $"/parts/{serial}" : $"/lots/{hit.Code}";

    private string? Asked()
    {
        if (string.IsNullOrWhiteSpace(Query))
        {
            return null;
        }

        switch (PrintedCode.Read(Query))
        {
            case CodeReading.Good { Code.Id: var id }:
                return id;
            case CodeReading.WrongCheck:
                Problem = texts["Search.Misread"];
                return null;
        }

        Problem = Query.Length > Longest ? texts["Search.TooLong", Longest].Value : Query.Contains('\0', StringComparison.Ordinal) ? texts["Search.Unreadable"].Value : null;
        return Problem is null ? Query.Trim() : null;
    }
}
