using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Domain.Work;

/// <summary>
/// What a command leads to: facts to append and a value to answer with, or a refusal. Nothing has been written yet;
/// the record book appends the facts.
/// </summary>
public sealed record Decision<T>(T? Value, IReadOnlyList<Fact> Facts, Refusal? Refusal)
{
    /// <summary>A refusal where a decision was asked for.</summary>
    public static implicit operator Decision<T>(Refusal refusal) => new(default, [], refusal);
}

/// <summary>Makes decisions without naming the type twice.</summary>
public static class Decision
{
    /// <summary>The command is accepted and leads to these facts.</summary>
    public static Decision<T> Accept<T>(T value, params IReadOnlyList<Fact> facts) => new(value, facts, null);
}

/// <summary>Why a command is refused.</summary>
public enum RefusalKind
{
    /// <summary>The command itself is wrong: 400.</summary>
    Invalid,

    /// <summary>Not for this person: 403.</summary>
    Forbidden,

    /// <summary>No such thing: 404.</summary>
    NotFound,

    /// <summary>Not in this state, or a gate is closed: 409.</summary>
    Conflict,

    /// <summary>Nothing at all can be recorded now: 503.</summary>
    Unavailable,

    /// <summary>Tried too often, or too many at once: 429.</summary>
    TooMany,
}

/// <summary>
/// A refusal in words: what is wrong, what was kept, and what to do; with the gate's checks or the faulty fields where there are any.
/// </summary>
public sealed record Refusal(
    RefusalKind Kind,
    string Message,
    IReadOnlyList<GateCheck> Checks,
    IReadOnlyDictionary<string, string[]> Errors
)
{
    private static readonly IReadOnlyDictionary<string, string[]> NoErrors = new Dictionary<string, string[]>();

    /// <summary>
    /// The kind of refusal for programs, one of <see cref="RefusalCode"/>; the usual one of its <see cref="Kind"/> unless said otherwise.
    /// </summary>
    public string Code { get; init; } =
        Kind switch
        {
            RefusalKind.Invalid => RefusalCode.InvalidRequest,
            RefusalKind.Forbidden => RefusalCode.NotAllowed,
            RefusalKind.NotFound => RefusalCode.NotFound,
            RefusalKind.Unavailable => RefusalCode.CannotRecordNow,
            RefusalKind.TooMany => RefusalCode.TooManyAttempts,
            _ => Checks.Count > 0 ? RefusalCode.GateClosed : RefusalCode.WrongState,
        };

    /// <summary>The command names or holds something wrong in one field.</summary>
    public static Refusal Invalid(string field, string message) =>
        new(RefusalKind.Invalid, message, [], new Dictionary<string, string[]> { [field] = [message] });

    /// <summary>Something named does not exist.</summary>
    public static Refusal NotFound(string message) => new(RefusalKind.NotFound, message, [], NoErrors);

    /// <summary>Not for this person.</summary>
    public static Refusal Forbidden(string message, string code = RefusalCode.NotAllowed) =>
        new(RefusalKind.Forbidden, message, [], NoErrors) { Code = code };

    /// <summary>Not possible in this state.</summary>
    public static Refusal Conflict(string message, string code = RefusalCode.WrongState) =>
        new(RefusalKind.Conflict, message, [], NoErrors) { Code = code };

    /// <summary>Tried too often, or too many at once; worth another try after that time.</summary>
    public static Refusal TooMany(string message, TimeSpan wait) => new(RefusalKind.TooMany, message, [], NoErrors) { Wait = wait };

    /// <summary>When to come again, where that is known.</summary>
    public TimeSpan? Wait { get; private init; }

    /// <summary>A gate is closed; all its checks go with the answer.</summary>
    public static Refusal GateClosed(GateVerdict gate) =>
        new(
            RefusalKind.Conflict,
            RefusalTexts.GateIsClosed(gate.Title, string.Join("; ", gate.Unmet.Select(c => c.Because))),
            gate.Checks,
            NoErrors
        );
}
