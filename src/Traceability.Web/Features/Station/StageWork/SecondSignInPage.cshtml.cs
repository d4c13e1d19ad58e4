using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Access;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>Where one person signs in a second time to do what two should.</summary>
[Authorize(Roles = $"{nameof(Role.Builder)},{nameof(Role.Quality)}")]
public sealed class SecondSignInPage(
    DossierReader dossiers,
    SignSecondTime sign,
    PinSignature pins,
    IStringLocalizer<DeskTexts> texts,
    Writes writes
) : DeskPage(writes)
{
    /// <summary>A stage that this person needs a second sign-in for, and what they did themselves.</summary>
    public sealed record StageToSign(string Code, string Title, string Own);

    [FromRoute]
    public string Serial { get; set; } = "";

    public IReadOnlyList<StageToSign> Stages { get; private set; } = [];

    /// <summary>The stages of a part that somebody needs a second sign-in for now.</summary>
    public static IReadOnlyList<StageToSign> For(Dossier dossier, Actor actor) =>
        [
            .. SecondSignIns
                .Needed(dossier, actor)
                .Select(n => new StageToSign(
                    n.Stage.Code,
                    n.Stage.Title,
                    string.Join(", ", n.Own.Select(o => dossier.Route.Find(o)?.Title ?? o))
                )),
        ];

    public async Task<IActionResult> OnGetAsync() => await LoadAsync() ? Page() : NotFound();

    public async Task<IActionResult> OnPostAsync(string? stage, string? aloneBecause)
    {
        var pin = Request.Form[PinSignature.Field].ToString();
        var recorded = await pins.UnprovenAsync(Actor, pin, HttpContext.RequestAborted) is { } unproven
            ? Refuse(unproven)
            : await RecordAsync(
                [Role.Builder, Role.Quality],
                c => sign.RunAsync(Serial, new(stage ?? "", aloneBecause ?? "", pin), Actor, c)
            );
        if (recorded)
        {
            Done = texts["Alone.Signed", Recorded<SignSecondTime.Output>().Stage];
            return LocalRedirect($"/parts/{Serial}");
        }

        return await LoadAsync() ? Page() : NotFound();
    }

    private async Task<bool> LoadAsync()
    {
        if (await PartLookup.FindAsync(Serial, dossiers, HttpContext.RequestAborted) is not { } dossier)
        {
            return false;
        }

        (Serial, Stages) = (dossier.Part.Serial, For(dossier, Actor));
        return true;
    }
}
