using System.Text;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Domain.Routes.Files;
using Traceability.Domain.Stages;
using Traceability.Domain.Work;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>
/// Every route revision with where it stands and the parts on it, and for the workshop lead the form to load the next from its file.
/// </summary>
[Authorize(Roles = $"{nameof(Role.Lead)},{nameof(Role.Quality)}")]
public sealed class RoutesPage(ListRevisions revisions, LoadRoute load, IStringLocalizer<DeskTexts> texts, Writes writes) : DeskPage(writes)
{
    private const int MostBytes = 1024 * 1024;

    public IReadOnlyList<RevisionRow> Lines { get; private set; } = [];

    /// <summary>The text of a file that was refused.</summary>
    public string? Kept { get; private set; }

    /// <summary>What is wrong with it, line by line.</summary>
    public IReadOnlyList<RouteProblem> Problems { get; private set; } = [];

    /// <summary>The revision before that one, to compare it with.</summary>
    public RevisionRow? Before(RevisionRow row) =>
        Lines.FirstOrDefault(r => r.Model == row.Model && r.Kind == row.Kind && r.Revision < row.Revision);

    protected override IReadOnlyCollection<string> LongFields => ["text"];

    public async Task OnGetAsync() => Lines = await revisions.RunAsync(null, null, HttpContext.RequestAborted);

    public async Task<IActionResult> OnPostAsync(IFormFile? file, string? text)
    {
        var (content, wrong) = await ReadAsync(file, text);
        if (wrong is not null ? Refuse(wrong) : await RecordAsync([Role.Lead], c => load.RunAsync(content!, Actor.PersonId, c)))
        {
            var loaded = Recorded<LoadRoute.Output>();
            Done = texts["Routes.Loaded", loaded.Revision, loaded.Model, loaded.Kind];
            return LocalRedirect($"/setup/routes/{loaded.Model}/{loaded.Kind}/{loaded.Revision}");
        }

        (Kept, Problems) = (content ?? "", content is null ? [] : RouteText.Read(content, StageMethods.Requirements).Problems);
        await OnGetAsync();
        return Page();
    }

    private static async Task<(string? Content, Refusal? Wrong)> ReadAsync(IFormFile? file, string? text)
    {
        if (file is null or { Length: 0 })
        {
            return string.IsNullOrWhiteSpace(text) ? (null, Refusal.Invalid("file", SetupSentences.ChooseARouteFile)) : (text, null);
        }

        if (file.Length > MostBytes)
        {
            return (null, Refusal.Invalid("file", SetupSentences.RouteFileHasTooManyBytes));
        }

        try
        {
            using var reader = new StreamReader(file.OpenReadStream(), new UTF8Encoding(false, true));
            return (await reader.ReadToEndAsync(), null);
        }
        catch (DecoderFallbackException)
        {
            return (null, Refusal.Invalid("file", SetupSentences.RouteFileIsAText));
        }
    }
}
