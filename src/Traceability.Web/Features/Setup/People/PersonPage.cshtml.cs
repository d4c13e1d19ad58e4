using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Setup.TakingBack;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.People;

/// <summary>One person: roles and qualifications given and taken, and a code by which the person sets a new PIN.</summary>
[Authorize(Roles = nameof(Role.Lead))]
public sealed class PersonPage(
    WorkshopContext db,
    SetRole setRole,
    SetQualification setQualification,
    GivePinCode codes,
    PersonActivity activity,
    CorrectName correctName,
    FindThing things,
    SetupHistory history,
    WorkshopCalendar calendar,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    [FromRoute]
    public string Badge { get; set; } = "";

    public Actor Person { get; private set; } = null!;

    /// <summary>The qualification that counts for each code, lapsed ones too.</summary>
    public IReadOnlyList<QualificationGrant> Qualifications { get; private set; } = [];

    /// <summary>The code that was just given; it is on this one answer and nowhere else.</summary>
    public ShownCode? Code { get; private set; }

    /// <summary>Whether the person signs in, and every change of that and of the name.</summary>
    public SetupThing Standing { get; private set; } = null!;

    /// <summary>What the person was called when entered.</summary>
    public string FirstCalled { get; private set; } = "";

    public IReadOnlyList<SetupChange> Changes { get; private set; } = [];

    public DateOnly Today => calendar.DayOf(Now);

    public async Task<IActionResult> OnGetAsync() => await LoadAsync() ? Page() : NotFound();

    public async Task<IActionResult> OnPostRoleAsync(Role role, bool given) =>
        await AnswerAsync(await RecordAsync([Role.Lead], c => setRole.RunAsync(Badge, new(role, given), Actor.PersonId, c)));

    public async Task<IActionResult> OnPostQualificationAsync(string? code, bool given, DateOnly? validUntil) =>
        await AnswerAsync(
            await RecordAsync([Role.Lead], c => setQualification.RunAsync(Badge, new(code ?? "", given, validUntil), Actor.PersonId, c))
        );

    public async Task<IActionResult> OnPostDeactivateAsync(string? reason) =>
        await AnswerAsync(await RecordAsync([Role.Lead], c => activity.RunAsync(Badge, SetupState.Retired, reason ?? "", Actor, c)));

    public async Task<IActionResult> OnPostReactivateAsync(string? reason) =>
        await AnswerAsync(await RecordAsync([Role.Lead], c => activity.RunAsync(Badge, SetupState.InUse, reason ?? "", Actor, c)));

    public async Task<IActionResult> OnPostNameAsync(string? name, string? reason) =>
        await AnswerAsync(
            await RecordAsync([Role.Lead], c => correctName.RunAsync(SetupSort.Person, Badge, new(name ?? "", reason ?? ""), Actor, c))
        );

    public async Task<IActionResult> OnPostCodeAsync(string? reason)
    {
        var given = await RecordAsync([Role.Lead], c => codes.RunAsync(Badge, reason ?? "", Actor, c))
            ? Recorded<GivePinCode.Output>()
            : null;
        Response.Headers.CacheControl = "no-store";
        if (!await LoadAsync())
        {
            return NotFound();
        }

        Code = given is null ? null : new(Person.Name, Person.Badge, given.Code, given.ExpiresAt);
        return Page();
    }

    private async Task<IActionResult> AnswerAsync(bool recorded)
    {
        if (recorded)
        {
            Done = texts["Person.Changed"];
            return RedirectToPage(new { Badge });
        }

        return await LoadAsync() ? Page() : NotFound();
    }

    private async Task<bool> LoadAsync()
    {
        var code = Badge.Trim().ToUpperInvariant();
        var id = await db.Set<Person>()
            .Where(p => p.Badge == code)
            .Select(p => (Guid?)p.Id)
            .FirstOrDefaultAsync(HttpContext.RequestAborted);
        if (id is null || await ActorQuery.FindAsync(db, id.Value, HttpContext.RequestAborted) is not { } person)
        {
            return false;
        }

        (Person, Badge) = (person, person.Badge);
        Standing = (await things.RunAsync(SetupSort.Person, Badge, null, HttpContext.RequestAborted)).Thing!;
        (FirstCalled, _, Changes) = await history.RunAsync(Standing, HttpContext.RequestAborted);
        Qualifications =
        [
            .. person
                .Qualifications.GroupBy(q => q.Code)
                .Select(g => g.MaxBy(q => q.RecordedAt)!)
                .Where(q => q.Given)
                .OrderBy(q => q.Code, StringComparer.Ordinal),
        ];
        return true;
    }
}
