using Microsoft.AspNetCore.Authorization;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.TakingBack;

/// <summary>Everything that is retired, deactivated or taken back now, newest first; all can be taken up again.</summary>
[Authorize(Roles = $"{nameof(Role.Lead)},{nameof(Role.Quality)}")]
public sealed class TakenBackPage(WorkshopContext db, NameQuery names, Writes writes) : DeskPage(writes)
{
    /// <summary>One of them: what it is, how it stands, and where its page is.</summary>
    public sealed record Line(SetupDecision Decision, string Name, string Url, Who By);

    public IReadOnlyList<Line> Lines { get; private set; } = [];

    public async Task OnGetAsync()
    {
        var cancellation = HttpContext.RequestAborted;
        var standing = (await db.Set<SetupDecision>().AsNoTracking().ToListAsync(cancellation))
            .GroupBy(d => d.SubjectId)
            .Select(g => g.MaxBy(d => d.RecordedAt)!)
            .Where(d => d.State != SetupState.InUse)
            .OrderByDescending(d => d.OccurredAt)
            .ToList();
        var people = await names.PeopleAsync(standing.Select(d => d.By), cancellation);
        Lines =
        [
            .. standing.Select(d => new Line(d, SetupThing.NameOf(d.Sort, d.Code), UrlOf(d), people.GetValueOrDefault(d.By, Who.Nobody))),
        ];
    }

    private static string UrlOf(SetupDecision d)
    {
        if (d.Sort == SetupSort.Person)
        {
            return $"/setup/people/{Uri.EscapeDataString(d.Code)}";
        }

        var of = SetupThing.Sorts.First(s => s.Value == d.Sort).Key;
        return d.Sort == SetupSort.Kind && d.Code.Split(':', 2) is [var list, var code]
            ? $"/setup/taking-back/{of}/{Uri.EscapeDataString(code)}?list={list}"
            : $"/setup/taking-back/{of}/{Uri.EscapeDataString(d.Code)}";
    }
}
