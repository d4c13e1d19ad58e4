using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.Extensions.Localization;
using Traceability.Documents.Labels;
using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;

namespace Traceability.Web.Features.Station.Actions;

/// <summary>The sheet that hangs at a bench, as a PDF. Nothing on it is private.</summary>
[AllowAnonymous]
public sealed class ActionSheetPage(IStringLocalizer<StationTexts> texts) : PageModel
{
    public IActionResult OnGet() =>
        File(ActionSheet.Render(texts["Sheet.Title"], texts["Sheet.Subtitle"], [.. StationActions.All.Select(LabelOf)]), "application/pdf");

    private LabelText LabelOf(StationAction action) =>
        new(PrintedCode.For(CodeKind.Action, action.Word()).Text, texts[$"Action.{action}"], texts[$"ActionMeaning.{action}"]);
}
