using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;
using Traceability.Web.Features.Station.StageWork;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.ScanBox;

/// <summary>
/// The station: one scan box. Every scan is a form POST that ends in a redirect, so that a reload never records again and station.js
/// may do the same by fetch. Open to people who are not signed in, for the badge is scanned here; the use cases ask who it is.
/// The token is checked by hand: when the sign-in has ended meanwhile, what was typed is kept and offered again.
/// </summary>
[AllowAnonymous]
[IgnoreAntiforgeryToken]
[SignedInBody(AttachEvidence.MaxBytes + (1024 * 1024))]
public sealed class ScanPage(
    ScreenStates screens,
    ScanProcessor scans,
    StationViewReader views,
    StationSignIn signIn,
    StationUpload uploads,
    IAntiforgery antiforgery,
    IStringLocalizer<StationTexts> texts
) : PageModel
{
    /// <summary>What is shown.</summary>
    public StationView Shown { get; private set; } = null!;

    public async Task OnGetAsync()
    {
        Shown = await views.ReadAsync(await screens.ReadAsync(HttpContext), HttpContext.RequestAborted);
    }

    /// <summary>One scan. It is read from the form here and never bound, because it may be a PIN.</summary>
    public Task<IActionResult> OnPostAsync() =>
        TakeAsync(
            async (screen, key) =>
                await scans.TakeAsync(
                    screen.Session,
                    ScanParser.Parse(Request.Form["Scan"].LastOrDefault()),
                    Answered(screen),
                    key,
                    HttpContext.RequestAborted
                )
        );

    /// <summary>Selects a part from another page; the part that was selected before stays as it is, its attempt open.</summary>
    public Task<IActionResult> OnPostTakeUpAsync(string serial) =>
        TakeAsync(
            async (screen, key) =>
            {
                var cleared =
                    screen.Session.Part is null && screen.Session.LoadParts.Count == 0
                        ? new(screen.Session, null)
                        : await scans.TakeAsync(screen.Session, new Scan.Action(StationAction.Clear), key, HttpContext.RequestAborted);
                return CodeText.TryRead(serial, StationSentences.ASerial, out var code, out _)
                    ? await scans.TakeAsync(cleared.Session, new Scan.Part(code), key, HttpContext.RequestAborted)
                    : cleared;
            }
        );

    /// <summary>A file for the attempt now open.</summary>
    public Task<IActionResult> OnPostFileAsync(IFormFile? file, string? name, string? fullScaleV) =>
        TakeAsync(
            async (screen, key) =>
                await uploads.TakeAsync(
                    screen.Session,
                    new(file, name, fullScaleV, Field(nameof(Awaited.Part)), Field(nameof(Awaited.Attempt))),
                    key,
                    HttpContext.RequestAborted
                )
        );

    /// <summary>
    /// What the scan answers: what its window showed, or, when it was sent before the answer to another scan came, what is
    /// awaited after that one. Null when that is not known.
    /// </summary>
    private Awaited? Answered(ScreenState screen) =>
        Field("After") is { Length: > 0 } before
            ? screen.LeftBy(before)
            : new(Field(nameof(Awaited.Part)), Field(nameof(Awaited.Attempt)), Field(nameof(Awaited.Prompt)));

    private string Field(string name) => Request.Form[name].LastOrDefault() ?? "";

    private async Task<IActionResult> TakeAsync(Func<ScreenState, string, Task<StationAnswer>> take)
    {
        var screen = await screens.ReadAsync(HttpContext);
        string key = Request.Form["Key"] is [{ Length: > 0 and <= 64 } sent] ? sent : Guid.NewGuid().ToString("N");
        if (!await antiforgery.IsRequestValidAsync(HttpContext))
        {
            await screens.KeepAsync(HttpContext, AfterExpiredSignIn(screen, Request.Form["Scan"].LastOrDefault()));
        }
        else if (!screen.HasTaken(key))
        {
            var kept = screen.Session.Asks == Question.Pin || screen.Session.Badge is null ? screen.Kept : null;
            await screens.KeepAsync(HttpContext, screen.With(await take(screen, key), key) with { Kept = kept });
        }

        return LocalRedirect("/station");
    }

    /// <summary>Nothing was recorded. The text is kept until the PIN is typed, unless it may be a PIN itself.</summary>
    private ScreenState AfterExpiredSignIn(ScreenState screen, string? typed)
    {
        var session = signIn.Reconcile(screen.Session, null);
        var mayBePin = screen.Session.Asks == Question.Pin || screen.Session.Badge is null;
        return screen with
        {
            Session = session.Badge is null
                ? session
                : session with
                {
                    Last = new(Severity.Refused, texts["Station.NotTaken"], texts["Station.NotTakenDetail"]),
                },
            SituationAtPrompt = null,
            Kept = mayBePin || string.IsNullOrWhiteSpace(typed) || typed.Length > ScanParser.MaxLength ? screen.Kept : typed.Trim(),
        };
    }
}
