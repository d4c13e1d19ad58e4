using System.Text;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>Every route revision, and the form to load the next from its file.</summary>
[Authorize(Roles = nameof(Role.Lead))]
public sealed class RoutesPage(WorkshopContext db, LoadRoute load, WorkshopCalendar calendar, IStringLocalizer<DeskTexts> texts, Writes writes) : DeskPage(writes)
{
    private const int MostBytes = 1024 * 1024;

    /// <summary>A revision with where it stands: in force, yet to come, or replaced.</summary>
    public sealed record Line(RouteRevision Revision, string State);

    public IReadOnlyList<Line> Lines { get; private set; } = [];

    protected override IReadOnlyCollection<string> LongFields => ["text"];

    public async Task OnGetAsync()
    {
        var today = calendar.DayOf(Now);
        var all = await db.Set<RouteRevision>().AsNoTracking().OrderBy(r => r.Model).ThenBy(r => r.Kind).ThenByDescending(r => r.Revision).ToListAsync(HttpContext.RequestAborted);
        Lines = [.. all.GroupBy(r => (r.Model, r.Kind)).SelectMany(g =>
        {
            var current = g.FirstOrDefault(r => r.EffectiveFrom <= today)?.Revision;
            return g.Select(r => new Line(r, r.Revision == current ? "current" : r.Revision > (current ?? 0) ? "waiting" : "superseded"));
        })];
    }

    public async Task<IActionResult> OnPostAsync(IFormFile? file, string? text)
    {
        var (content, wrong) = await ReadAsync(file, text);
        if (wrong is not null ? Refuse(wrong) : await RecordAsync([Role.Lead], c => load.RunAsync(content!, Actor.PersonId, c)))
        {
            var loaded = Recorded<LoadRoute.Output>();
            Done = texts["Routes.Loaded", loaded.Revision, loaded.Model, loaded.Kind];
            return LocalRedirect($"/setup/routes/{loaded.Model}/{loaded.Kind}/{loaded.Revision}");
        }

        await OnGetAsync();
        return Page();
    }

    private static async Task<(string? Content, Refusal? Wrong)> ReadAsync(IFormFile? file, string? text)
    {
        if (file is null or { Length: 0 })
        {
            return string.IsNullOrWhiteSpace(text) ? (null, Refusal.Invalid("file", "choose a route file, or paste its text")) : (text, null);
        }

        if (file.Length > MostBytes)
        {
            return (null, Refusal.Invalid("file", "a route file has at most a million bytes"));
        }

        try
        {
            using var reader = new StreamReader(file.OpenReadStream(), new UTF8Encoding(false, true));
            return (await reader.ReadToEndAsync(), null);
        }
        catch (DecoderFallbackException)
        {
            return (null, Refusal.Invalid("file", "a route file is a text in UTF-8; this is something else"));
        }
    }
}
