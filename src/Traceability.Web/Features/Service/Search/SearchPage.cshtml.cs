using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Service.Search;

/// <summary>What the look-up box found. A printed code, or a code typed whole however it is written, leads straight to its page.</summary>
public sealed class SearchPage(LookUp use, IStringLocalizer<DeskTexts> texts, Writes writes) : DeskPage(writes)
{
    private const int Longest = 100;

    [BindProperty(SupportsGet = true, Name = "q")]
    public string? Query { get; set; }

    public IReadOnlyList<Found> Hits { get; private set; } = [];

    /// <summary>True when nothing is called so, and the hits are one character away.</summary>
    public bool Mistaken { get; private set; }

    /// <summary>What was wrong with the question.</summary>
    public string? Problem { get; private set; }

    public async Task<IActionResult> OnGetAsync()
    {
        if (string.IsNullOrWhiteSpace(Query))
        {
            return Page();
        }

        Problem =
            Query.Length > Longest ? texts["Search.TooLong", Longest].Value
            : Query.Contains('\0', StringComparison.Ordinal) ? texts["Search.Unreadable"].Value
            : null;
        if (Problem is not null)
        {
            return Page();
        }

        var answer = await use.RunAsync(Query, HttpContext.RequestAborted);
        (Hits, Mistaken, Problem) = (answer.Hits, answer.Mistaken, answer.Refusal is null ? null : texts["Search.Misread"].Value);
        var called = Mistaken ? [] : Hits.Where(h => LookUp.IsCalled(h, answer.Asked)).Select(UrlOf).Distinct().ToList();
        return called is [var only] ? LocalRedirect(only) : Page();
    }

    /// <summary>Where a hit leads.</summary>
    public static string UrlOf(Found hit) =>
        hit switch
        {
            { What: "certificate", Serial: { } unit } => $"/parts/{unit}/certificate",
            { Serial: { } serial } => $"/parts/{serial}",
            _ => $"/lots/{hit.Code}",
        };
}
