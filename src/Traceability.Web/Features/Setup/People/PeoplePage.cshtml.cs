using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.People;

/// <summary>Everybody, with roles and qualifications; and the form for the next person.</summary>
[Authorize(Roles = nameof(Role.Lead))]
public sealed class PeoplePage(WorkshopContext db, AddPerson add, WorkshopCalendar calendar, IStringLocalizer<DeskTexts> texts, Writes writes) : DeskPage(writes)
{
    /// <summary>Not bound, and with an underscore: a PIN is neither shown again nor part of what is hashed.</summary>
    public const string PinField = "_Pin";

    public IReadOnlyList<PersonAnswer> People { get; private set; } = [];

    public Task OnGetAsync() => LoadAsync();

    public async Task<IActionResult> OnPostAsync(string? badge, string? name, Role[]? roles, string? qualifications)
    {
        var input = new AddPerson.Input(badge ?? "", name ?? "", Request.Form[PinField].ToString(), roles, Split(qualifications));
        if (await RecordAsync([Role.Lead], c => add.RunAsync(input, Actor.PersonId, c)))
        {
            var person = Recorded<PersonAnswer>();
            Done = texts["People.Added", person.Name, person.Badge];
            return LocalRedirect("/setup/people");
        }

        await LoadAsync();
        return Page();
    }

    /// <summary>Codes parted by commas or blanks.</summary>
    internal static IReadOnlyList<string> Split(string? codes) => (codes ?? "").Split([',', ' ', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private async Task LoadAsync() => People = [.. (await ListPeople.AllAsync(db, HttpContext.RequestAborted)).Select(a => PersonAnswer.Of(a, calendar.DayOf(Now)))];
}
