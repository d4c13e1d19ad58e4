using System.Text.Json;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Traceability.Domain.Gates;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Shared;

/// <summary>
/// A page for a signed-in person. Its forms carry a key (<see cref="Display.NewKey"/>), and a refusal shows what happened, with the form as
/// it was filled in.
/// </summary>
public abstract class WorkshopPage : PageModel
{
    private static Refusal ShownBefore => Domain.Work.Refusal.Conflict(SharedSentences.SecretWasShownBefore);

    private static Refusal KeyReused => Domain.Work.Refusal.Conflict(SharedSentences.FormWasSentBefore);

    /// <summary>The signed-in person.</summary>
    public Actor Actor =>
        SessionAuthentication.ActorOf(HttpContext) ?? throw new InvalidOperationException("this page was reached without a session");

    /// <summary>The form's key, so that a form sent twice records once.</summary>
    [BindProperty]
    public string? Key { get; set; }

    /// <summary>Why the last command was refused; show it with <c>&lt;partial name="_Refusal" model="Model.Refusal" /&gt;</c>.</summary>
    public Refusal? Refusal { get; private set; }

    /// <summary>The words shown once on the next page.</summary>
    [TempData]
    public string? Done { get; set; }

    /// <summary>
    /// True when the command was recorded; otherwise <see cref="Refusal"/> says why not and the answer's status follows it.
    /// </summary>
    protected bool Took(WrittenAnswer answer)
    {
        Refusal =
            answer.KeyReused ? KeyReused
            : answer.AlreadyShown ? ShownBefore
            : answer.Refusal;
        Response.StatusCode = Refusal switch
        {
            null => 200,
            { Kind: RefusalKind.Invalid } => 400,
            { Kind: RefusalKind.Forbidden } => 403,
            { Kind: RefusalKind.NotFound } => 404,
            { Kind: RefusalKind.TooMany } => 429,
            _ => 409,
        };
        return Refusal is null;
    }

    /// <summary>What a recorded command answered.</summary>
    protected static T AnswerOf<T>(WrittenAnswer answer) => JsonSerializer.Deserialize<T>(answer.Json, JsonRules.OurAnswers)!;
}
