using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Shared;

/// <summary>
/// A page of the desk: it may have several forms, each with a name. What is refused is said inside the form that asked for it, and what
/// was typed there is kept.
/// </summary>
public abstract class DeskPage(Writes writes) : WorkshopPage
{
    /// <summary>The field that says which form of the page was sent; its underscore keeps it out of the hash of what was asked.</summary>
    public const string FormField = "_Form";

    /// <summary>As long as any text of the contract may be.</summary>
    private const int LongestText = 4000;

    private bool said;
    private WrittenAnswer? written;

    /// <summary>Fields that hold a whole file.</summary>
    protected virtual IReadOnlyCollection<string> LongFields => [];

    /// <summary>The moment at which the page is read.</summary>
    public DateTimeOffset Now => writes.Now;

    /// <summary>True for a person with one of these roles.</summary>
    public bool May(params IEnumerable<Role> roles) => roles.Any(Actor.Is);

    /// <summary>A refusal that no form has said, because the form is not shown (any more); the layout says it above the page.</summary>
    public Refusal? Unsaid => said ? null : Refusal;

    /// <summary>The refusal of that form, to be said in it.</summary>
    public Refusal? Say(string form)
    {
        said |= RefusedIn(form) is not null;
        return RefusedIn(form);
    }

    /// <summary>The refusal of that form, if it was the one refused.</summary>
    public Refusal? RefusedIn(string form) => Refusal is not null && SentForm == form ? Refusal : null;

    /// <summary>What was typed into a refused form; otherwise what the field begins with.</summary>
    public string? Typed(string form, string field, string? otherwise = null) =>
        RefusedIn(form) is null ? otherwise : Request.Form[field].ToString();

    /// <summary>Runs a command for people with these roles, once per form key. True when it was recorded.</summary>
    protected async Task<bool> RecordAsync<T>(IReadOnlyCollection<Role> roles, Func<CancellationToken, Task<Answer<T>>> decide) =>
        Took(
            written = (NotFor(roles) ?? Unreadable() ?? TooLong()) is { } refusal
                ? new(0, "", refusal, false)
                : await writes.RunPageAsync(Key, decide)
        );

    /// <summary>What the command that was just recorded answered; the same again for a form sent twice.</summary>
    protected T Recorded<T>() => AnswerOf<T>(written!);

    /// <summary>Refuses before anything is asked of a use case.</summary>
    protected bool Refuse(Refusal refusal) => Took(new(0, "", refusal, false));

    private string? SentForm => Request.HasFormContentType ? Request.Form[FormField].ToString() : null;

    private Refusal? NotFor(IReadOnlyCollection<Role> roles) =>
        May(roles)
            ? null
            : Refusal.Forbidden(
                SharedSentences.RolesDoNotInclude(
                    Actor.Name,
                    string.Join(", ", Actor.Roles.Order().Select(r => r.ToString().ToLowerInvariant()))
                )
            );

    /// <summary>A date or number that the form could not make sense of must not be taken for one left out.</summary>
    private Refusal? Unreadable() =>
        ModelState.FirstOrDefault(m => m.Value?.Errors.Count > 0) is { Key: { } field, Value: { } entry }
            ? Refusal.Invalid(field, SharedSentences.CannotBeReadHere(entry.AttemptedValue))
            : null;

    private Refusal? TooLong() =>
        Request.Form.FirstOrDefault(f => f.Value.ToString().Length > LongestText && !LongFields.Contains(f.Key)).Key is { } field
            ? Refusal.Invalid(field, SharedSentences.TextIsTooLong(LongestText))
            : null;
}
