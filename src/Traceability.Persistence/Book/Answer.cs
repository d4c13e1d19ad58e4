using Traceability.Domain.Work;

namespace Traceability.Persistence.Book;

/// <summary>
/// What a command answers: a status with a body to be kept with the idempotency key, or a refusal, after which nothing was written.
/// </summary>
public abstract record Answer(int Status, object? Body, Refusal? Refusal)
{
    /// <summary>Done: 200.</summary>
    public static Answer<T> Ok<T>(T body) => new(200, body, null);

    /// <summary>Made: 201.</summary>
    public static Answer<T> Created<T>(T body) => new(201, body, null);

    /// <summary>Made, and the answer holds a code or a token: it is given this once and not kept.</summary>
    public static Answer<T> CreatedOnce<T>(T body) => Created(body) with { ShownOnce = true };

    /// <summary>True when the answer holds what must not be kept.</summary>
    public bool ShownOnce { get; init; }
}

/// <summary>What a command answers, with the shape of its body.</summary>
/// <typeparam name="T">The shape of the body.</typeparam>
public sealed record Answer<T>(int Status, T? Value, Refusal? Refusal) : Answer(Status, Value, Refusal)
{
    /// <summary>A refusal where an answer was asked for.</summary>
    public static implicit operator Answer<T>(Refusal refusal) => new(0, default, refusal);
}

/// <summary>How often a command was seen: whose key it is, the key, and a hash of everything it asks for but secrets.</summary>
public sealed record WriteRequest(string Caller, string? IdempotencyKey, string RequestHash)
{
    /// <summary>A command that comes without a key and is never answered from memory.</summary>
    public static readonly WriteRequest Unkeyed = new("", null, "");
}

/// <summary>The answer as it is sent, and sent again for the same key.</summary>
public sealed record WrittenAnswer(int Status, string Json, Refusal? Refusal, bool KeyReused)
{
    /// <summary>True when this very command was written before, and this is the answer of then.</summary>
    public bool Replayed { get; init; }

    /// <summary>True when this very command was written before and its answer held a secret, which is not kept.</summary>
    public bool AlreadyShown { get; init; }

    internal static readonly WrittenAnswer OtherBodyForSameKey = new(422, "", null, true);

    internal static readonly WrittenAnswer ShownBefore = new(409, "", null, false) { Replayed = true, AlreadyShown = true };
}
