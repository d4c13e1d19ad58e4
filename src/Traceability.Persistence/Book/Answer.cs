using Traceability.Domain.Work;

namespace Traceability.Persistence.Book;

/// <summary>What a command answers: a status with a body to be kept with the idempotency key, or a refusal, after which nothing was written.</summary>
public sealed record Answer(int Status, object? Body, Refusal? Refusal)
{
    /// <summary>Done: 200.</summary>
    public static Answer Ok(object body) => new(200, body, null);

    /// <summary>Made: 201.</summary>
    public static Answer Created(object body) => new(201, body, null);

    /// <summary>Refused; nothing was written.</summary>
    public static Answer Refused(Refusal refusal) => new(0, null, refusal);

    /// <summary>A refusal where an answer was asked for.</summary>
    public static implicit operator Answer(Refusal refusal) => Refused(refusal);
}

/// <summary>How often a command was seen: its key, and a hash of everything it asks for.</summary>
public sealed record WriteRequest(string? IdempotencyKey, string RequestHash);

/// <summary>The answer as it is sent, and sent again for the same key.</summary>
public sealed record WrittenAnswer(int Status, string Json, Refusal? Refusal, bool KeyReused)
{
    /// <summary>True when this very command was written before, and this is the answer of then.</summary>
    public bool Replayed { get; init; }

    internal static readonly WrittenAnswer OtherBodyForSameKey = new(422, "", null, true);
}
