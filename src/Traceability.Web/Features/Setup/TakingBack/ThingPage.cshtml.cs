using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Records;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.TakingBack;

/// <summary>
/// One thing of the set-up: what depends on it, and the forms to retire it, to take it back as a mistake, to take it into use again and to
/// correct its name. The grave forms stand here, apart from everyday work.
/// </summary>
[Authorize(Roles = $"{nameof(Role.Lead)},{nameof(Role.Quality)}")]
public sealed class ThingPage(
    FindThing things,
    WhatDepends depends,
    SetupHistory history,
    SetupDecisions decisions,
    CorrectName correct,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    private static readonly Role[] Deciders = [Role.Lead, Role.Quality];

    [FromRoute]
    public string Of { get; set; } = "";

    [FromRoute]
    public string Code { get; set; } = "";

    /// <summary>Of a kind: the list in which it stands.</summary>
    [BindProperty(SupportsGet = true)]
    public string? List { get; set; }

    public SetupThing Thing { get; private set; } = null!;

    /// <summary>What it is called now.</summary>
    public string Called { get; private set; } = "";

    /// <summary>What it was called when it was entered.</summary>
    public string FirstCalled { get; private set; } = "";

    public IReadOnlyList<SetupChange> Changes { get; private set; } = [];

    /// <summary>What depends on it, in words.</summary>
    public IReadOnlyList<string> Dependents { get; private set; } = [];

    public bool MayCorrectName => May(Role.Lead) && Thing.Sort is SetupSort.Station or SetupSort.Instrument;

    /// <summary>The page of the thing itself, or of the list in which it stands.</summary>
    public string Back =>
        Thing.Sort switch
        {
            SetupSort.Instrument when Thing.State != SetupState.Mistake => $"/instruments/{Uri.EscapeDataString(Thing.Code)}",
            SetupSort.Lot when Thing.State != SetupState.Mistake => $"/lots/{Uri.EscapeDataString(Thing.Code)}",
            SetupSort.Instrument => "/instruments",
            SetupSort.Lot => "/lots",
            SetupSort.Model => "/setup/routes",
            SetupSort.Carrier => "/setup/carriers",
            SetupSort.Kind => "/setup/kinds",
            _ => "/setup/stations",
        };

    public async Task<IActionResult> OnGetAsync() => await LoadAsync() ? Page() : NotFound();

    public Task<IActionResult> OnPostRetireAsync(string? reason) => DecideAsync(SetupState.Retired, reason);

    public Task<IActionResult> OnPostMistakeAsync(string? reason) => DecideAsync(SetupState.Mistake, reason);

    public Task<IActionResult> OnPostReinstateAsync(string? reason) => DecideAsync(SetupState.InUse, reason);

    public async Task<IActionResult> OnPostNameAsync(string? name, string? reason) =>
        !SetupThing.Sorts.TryGetValue(Of, out var sort)
            ? NotFound()
            : await AnswerAsync(
                await RecordAsync([Role.Lead], c => correct.RunAsync(sort, Code, new(name ?? "", reason ?? ""), Actor, c)),
                texts["TakeBack.NameDone", name?.Trim() ?? ""]
            );

    private async Task<IActionResult> DecideAsync(SetupState state, string? reason) =>
        !SetupThing.Sorts.TryGetValue(Of, out var sort)
            ? NotFound()
            : await AnswerAsync(
                await RecordAsync(Deciders, c => decisions.RunAsync(sort, Code, new(reason ?? "", List), state, Actor, c)),
                texts[$"TakeBack.Done.{state}", SetupThing.NameOf(sort, Code)]
            );

    private async Task<IActionResult> AnswerAsync(bool recorded, string done)
    {
        if (recorded)
        {
            Done = done;
            return LocalRedirect($"{Request.Path}{Request.QueryString}".Split("handler=")[0].TrimEnd('?', '&'));
        }

        return await LoadAsync() ? Page() : NotFound();
    }

    private async Task<bool> LoadAsync()
    {
        var cancellation = HttpContext.RequestAborted;
        if (
            !SetupThing.Sorts.TryGetValue(Of, out var sort)
            || (await things.RunAsync(sort, Code, List, cancellation)).Thing is not { } found
        )
        {
            return false;
        }

        (Thing, Code) = (found, found.Code);
        (FirstCalled, Called, Changes) = await history.RunAsync(found, cancellation);
        Dependents = await depends.RunAsync(found, cancellation);
        return true;
    }
}
