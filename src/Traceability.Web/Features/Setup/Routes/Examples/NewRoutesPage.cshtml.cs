using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Routes.Examples;

/// <summary>The routes of a new model: from an example that the program carries, or from nothing.</summary>
[Authorize(Roles = nameof(Role.Lead))]
public sealed class NewRoutesPage(StartFromExample start, IStringLocalizer<RouteEditTexts> texts, Writes writes) : DeskPage(writes)
{
    /// <summary>True when film lots have no route yet.</summary>
    public bool FilmLotsLack { get; private set; }

    /// <summary>True when a box of the form is ticked; all are to begin with.</summary>
    public bool Ticked(string name, string value) => RefusedIn("example") is null || Request.Form[name].Contains(value);

    public async Task OnGetAsync() => FilmLotsLack = !await start.HasFilmLotsAsync(HttpContext.RequestAborted);

    /// <summary>Proposes the routes of an example.</summary>
    public async Task<IActionResult> OnPostAsync(string? design, string? model, string? letters, string[] kinds, bool film)
    {
        var asked = new StartFromExample.Input(design ?? "", model ?? "", letters ?? "", kinds, film);
        if (await RecordAsync([Role.Lead], c => start.RunAsync(asked, Actor, c)))
        {
            var routes = Recorded<StartFromExample.Output>().Routes;
            Done = texts["New.Done", string.Join(", ", routes.Select(r => $"{r.Model} {r.Kind}"))];
            return LocalRedirect("/setup/routes");
        }

        await OnGetAsync();
        return Page();
    }

    /// <summary>Begins one route from nothing: the editor opens, nothing is kept until it is proposed.</summary>
    public async Task<IActionResult> OnPostBlankAsync(string? blankModel, string? kind, string? title, string? prefix)
    {
        string?[] asked = [blankModel, kind, title, prefix];
        if (asked.Any(string.IsNullOrWhiteSpace))
        {
            var fields = new[] { nameof(blankModel), nameof(kind), nameof(title), nameof(prefix) };
            Refuse(Domain.Work.Refusal.Invalid(fields[Array.FindIndex(asked, string.IsNullOrWhiteSpace)], SetupSentences.SayItToBegin));
            await OnGetAsync();
            return Page();
        }

        var (m, k) = (Uri.EscapeDataString(blankModel!.Trim()), Uri.EscapeDataString(kind!.Trim()));
        return LocalRedirect(
            $"/routes/{m}/{k}/edit?title={Uri.EscapeDataString(title!.Trim())}&prefix={Uri.EscapeDataString(prefix!.Trim())}"
        );
    }
}
