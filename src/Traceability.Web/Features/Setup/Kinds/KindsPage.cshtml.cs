using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Kinds;

/// <summary>The workshop's lists of kinds, from which forms let people choose; and the form for the next.</summary>
[Authorize(Roles = $"{nameof(Role.Lead)},{nameof(Role.Quality)}")]
public sealed class KindsPage(ListKinds kinds, AddKind add, IStringLocalizer<DeskTexts> texts, Writes writes) : DeskPage(writes)
{
    private static readonly Role[] Adders = [Role.Lead, Role.Quality];

    /// <summary>The lists, in the order of the work.</summary>
    public IReadOnlyList<(KindOf Of, IReadOnlyList<ListKinds.KindAnswer> Kinds)> Lists { get; private set; } = [];

    public async Task OnGetAsync()
    {
        var lists = new List<(KindOf, IReadOnlyList<ListKinds.KindAnswer>)>();
        foreach (var of in Enum.GetValues<KindOf>())
        {
            lists.Add((of, await kinds.RunAsync(of, true, HttpContext.RequestAborted)));
        }

        Lists = lists;
    }

    public async Task<IActionResult> OnPostAsync(string? of, string? code, string? title)
    {
        if (await RecordAsync(Adders, c => add.RunAsync(new(of ?? "", code ?? "", title ?? ""), Actor.PersonId, c)))
        {
            Done = texts["Kinds.Added", Recorded<ListKinds.KindAnswer>().Title];
            return LocalRedirect("/setup/kinds");
        }

        await OnGetAsync();
        return Page();
    }
}
