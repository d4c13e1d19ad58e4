using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Lots;

/// <summary>The lots in quarantine, of which some or all are released by one decision with one reason: all of them or none.</summary>
[Authorize(Roles = nameof(Role.Quality))]
public sealed class ReleaseLotsPage(
    WorkshopContext db,
    LotQuery lots,
    LotDecisions decisions,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    /// <summary>As many as one looks through before deciding.</summary>
    private const int Most = 500;

    public IReadOnlyList<LotAnswer> Waiting { get; private set; } = [];

    /// <summary>The lots that were chosen in a form that was refused.</summary>
    public bool WasChosen(string number) => (Typed("release", "numbers") ?? "").Split(',').Contains(number);

    public async Task OnGetAsync(CancellationToken cancellation) =>
        Waiting = (await ListLots.RunAsync(db, lots, null, "quarantined", false, new(Most, null), cancellation)).Items;

    public async Task<IActionResult> OnPostAsync(string[]? numbers, string? reason, CancellationToken cancellation)
    {
        if (await RecordAsync([Role.Quality], c => ReleaseAsync(numbers ?? [], reason ?? "", c)))
        {
            var count = Recorded<ReleasedLots>().Numbers.Count;
            Done = count == 1 ? texts["ReleaseLots.DoneOne"] : texts["ReleaseLots.Done", count];
            return LocalRedirect("/lots");
        }

        await OnGetAsync(cancellation);
        return Page();
    }

    /// <summary>The lots that one decision released.</summary>
    public sealed record ReleasedLots(IReadOnlyList<string> Numbers);

    private async Task<Answer<ReleasedLots>> ReleaseAsync(string[] numbers, string reason, CancellationToken cancellation)
    {
        if (numbers.Length == 0)
        {
            return Refusal.Invalid("numbers", texts["ReleaseLots.ChooseOne"]);
        }

        foreach (var number in numbers.Distinct())
        {
            var decided = await decisions.RunAsync(number, LotState.Released, reason, null, Actor, cancellation);
            if (decided.Refusal is { } refusal)
            {
                return refusal with { Message = texts["ReleaseLots.NotAll", number, refusal.Message] };
            }
        }

        return Answer.Ok(new ReleasedLots([.. numbers.Distinct()]));
    }
}
