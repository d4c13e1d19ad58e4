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
    Seats seats,
    ScanDesk desk,
    StationViewReader views,
    StationSignIn signIn,
    StationFile files,
    IAntiforgery antiforgery,
    IStringLocalizer<StationTexts> texts
) : PageModel
{
    /// <summary>What is shown.</summary>
    public StationView Shown { get; private set; } = null!;

    public async Task OnGetAsync()
    {
        Shown = await views.ReadAsync(await seats.ReadAsync(HttpContext), HttpContext.RequestAborted);
    }

    /// <summary>One scan. It is read from the form here and nowhere bound, for it may be a PIN.</summary>
    public Task<IActionResult> OnPostAsync() =>
        TakeAsync(
            async (seat, key) =>
                await desk.TakeAsync(
                    seat.Session,
                    ScanParser.Parse(Request.Form["Scan"].LastOrDefault()),
                    Answered(seat),
                    key,
                    HttpContext.RequestAborted
                )
        );

    /// <summary>Takes a part up from another page: whatever lay on the bench is put aside, and stays open.</summary>
    public Task<IActionResult> OnPostTakeUpAsync(string serial) =>
        TakeAsync(
            async (seat, key) =>
            {
                var cleared =
                    seat.Session.Part is null && seat.Session.LoadParts.Count == 0
                        ? new(seat.Session, null)
                        : await desk.TakeAsync(seat.Session, new Scan.Action(StationAction.Clear), key, HttpContext.RequestAborted);
                return CodeText.TryRead(serial, StationSentences.ASerial, out var code, out _)
                    ? await desk.TakeAsync(cleared.Session, new Scan.Part(code), key, HttpContext.RequestAborted)
                    : cleared;
            }
        );

    /// <summary>A file for the attempt now open.</summary>
    public Task<IActionResult> OnPostFileAsync(IFormFile? file, string? name, string? fullScaleV) =>
        TakeAsync(
            async (seat, key) =>
                await files.TakeAsync(
                    seat.Session,
                    new(file, name, fullScaleV, Field(nameof(Awaited.Part)), Field(nameof(Awaited.Attempt))),
                    key,
                    HttpContext.RequestAborted
                )
        );

    /// <summary>
    /// What the scan answers: what its window showed, or, made ahead of the answer to another one, what that one was to leave. Null
    /// when that is not known.
    /// </summary>
    private Awaited? Answered(Seat seat) =>
        Field("After") is { Length: > 0 } before
            ? seat.LeftBy(before)
            : new(Field(nameof(Awaited.Part)), Field(nameof(Awaited.Attempt)), Field(nameof(Awaited.Prompt)));

    private string Field(string name) => Request.Form[name].LastOrDefault() ?? "";

    private async Task<IActionResult> TakeAsync(Func<Seat, string, Task<StationAnswer>> take)
    {
        var seat = await seats.ReadAsync(HttpContext);
        string key = Request.Form["Key"] is [{ Length: > 0 and <= 64 } sent] ? sent : Guid.NewGuid().ToString("N");
        if (!await antiforgery.IsRequestValidAsync(HttpContext))
        {
            await seats.KeepAsync(HttpContext, Ended(seat, Request.Form["Scan"].LastOrDefault()));
        }
        else if (!seat.HasTaken(key))
        {
            var kept = seat.Session.Asks == Question.Pin || seat.Session.Badge is null ? seat.Kept : null;
            await seats.KeepAsync(HttpContext, seat.With(await take(seat, key), key) with { Kept = kept });
        }

        return LocalRedirect("/station");
    }

    /// <summary>Nothing was taken. The text is kept for after the PIN, unless it may be a PIN itself.</summary>
    private Seat Ended(Seat seat, string? typed)
    {
        var session = signIn.InStep(seat.Session, null);
        var mayBePin = seat.Session.Asks == Question.Pin || seat.Session.Badge is null;
        return seat with
        {
            Session = session.Badge is null
                ? session
                : session with
                {
                    Last = new(Severity.Refused, texts["Station.NotTaken"], texts["Station.NotTakenDetail"]),
                },
            SpokeAt = null,
            Kept = mayBePin || string.IsNullOrWhiteSpace(typed) || typed.Length > ScanParser.MaxLength ? seat.Kept : typed.Trim(),
        };
    }
}
