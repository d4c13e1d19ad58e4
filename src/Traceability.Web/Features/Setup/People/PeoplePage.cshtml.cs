using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.People;

/// <summary>Everybody, with roles and qualifications; and the form for the next person.</summary>
[Authorize(Roles = nameof(Role.Lead))]
public sealed class PeoplePage(WorkshopContext db, AddPerson add, WorkshopCalendar calendar, Writes writes) : DeskPage(writes)
{
    public IReadOnlyList<PersonAnswer> People { get; private set; } = [];

    /// <summary>Who was just added, with the code; it is on this one answer and nowhere else.</summary>
    public AddPerson.Output? Added { get; private set; }

    public Task OnGetAsync() => LoadAsync();

    public async Task<IActionResult> OnPostAsync(string? badge, string? name, Role[]? roles, string? qualifications)
    {
        var input = new AddPerson.Input(badge ?? "", name ?? "", roles, Split(qualifications));
        Added = await RecordAsync([Role.Lead], c => add.RunAsync(input, Actor.PersonId, c)) ? Recorded<AddPerson.Output>() : null;
        Response.Headers.CacheControl = "no-store";
        await LoadAsync();
        return Page();
    }

    /// <summary>Codes parted by commas or blanks.</summary>
    internal static IReadOnlyList<string> Split(string? codes) =>
        (codes ?? "").Split([',', ' ', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private async Task LoadAsync() => People = await ListPeople.AnswersAsync(db, true, calendar.DayOf(Now), HttpContext.RequestAborted);
}
