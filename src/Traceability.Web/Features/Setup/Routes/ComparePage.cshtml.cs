using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Routes.Comparison;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>The lines of one stage, or of the route itself, with the revisions that they are of.</summary>
public sealed record ComparedLines(ComparePage Page, IReadOnlyList<ComparedLine> Lines);

/// <summary>Two revisions of one route side by side: what was added, removed, moved and changed.</summary>
[Authorize(Roles = $"{nameof(Role.Lead)},{nameof(Role.Quality)}")]
public sealed class ComparePage(
    WorkshopContext db,
    CompareRevisions compare,
    ListRevisions revisions,
    IStringLocalizer<RoutePageTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    [FromRoute]
    public string Model { get; set; } = "";

    [FromRoute]
    public string Kind { get; set; } = "";

    /// <summary>True to show what is the same too.</summary>
    [BindProperty(SupportsGet = true)]
    public bool All { get; set; }

    public RevisionRow Left { get; private set; } = null!;

    public RevisionRow Right { get; private set; } = null!;

    /// <summary>All revisions to choose from, the latest first.</summary>
    public IReadOnlyList<RevisionRow> Revisions { get; private set; } = [];

    public RouteComparison Compared { get; private set; } = null!;

    /// <summary>The lines of the two files that differ, with some of the others around them.</summary>
    public IReadOnlyList<FileLine> FileLinesShown { get; private set; } = [];

    /// <summary>The two revisions asked for; where one is not said, the latest two.</summary>
    public async Task<IActionResult> OnGetAsync(int? left, int? right)
    {
        var cancellation = HttpContext.RequestAborted;
        Revisions = await revisions.RunAsync(Model, Kind, cancellation);
        var becomes = Revisions.FirstOrDefault(r => right is null || r.Revision == right);
        var was = left is null
            ? Revisions.FirstOrDefault(r => r.Revision < becomes?.Revision) ?? becomes
            : Revisions.FirstOrDefault(r => r.Revision == left);
        if (
            !ModelState.IsValid
            || was is null
            || becomes is null
            || (await compare.RunAsync(Model, Kind, was.Revision, becomes.Revision, cancellation)).Compared is not { } compared
        )
        {
            return NotFound();
        }

        (Left, Right, Compared) = (was, becomes, compared);
        var files = await db.Set<RouteRevision>()
            .Where(r => r.Model == Model && r.Kind == Kind && (r.Revision == was.Revision || r.Revision == becomes.Revision))
            .ToDictionaryAsync(r => r.Revision, r => r.Text, cancellation);
        var lines = FileLines.Of(files[was.Revision], files[becomes.Revision]);
        FileLinesShown = All ? lines : FileLines.Around(lines, 2);
        return Page();
    }

    /// <summary>The lines to show: those that differ, or all.</summary>
    public ComparedLines Shown(IEnumerable<ComparedLine> lines) => new(this, [.. lines.Where(l => All || l.Difference != Difference.Same)]);

    /// <summary>A value in words: yes and no, the text of a caution, a limit with nothing there.</summary>
    public string Words(ComparedLine line, string? value) =>
        (line, value) switch
        {
            (_, null) => texts["Compare.Nothing"],
            (_, "true") => texts["Compare.Yes"],
            (_, "false") => texts["Compare.No"],
            ({ Aspect: RouteAspect.Caution, Field: "caution" }, _) => Cautions.Texts.GetValueOrDefault(value, value),
            _ => value,
        };
}
