using Traceability.Domain.Gates;
using Traceability.Domain.Work;

namespace Traceability.Web.Http;

/// <summary>
/// A problem document (RFC 9457). <c>Type</c> is one of the addresses under /problems, <c>Errors</c> names what is wrong in which field,
/// <c>Checks</c> is everything that a closed gate asked, and <c>RequestId</c> finds the request in the log.
/// </summary>
/// <param name="Type" example="/problems/gate-closed">Which kind of problem it is: an address here that says what it means.</param>
/// <param name="Title" example="The gate is closed.">The kind in a few words.</param>
/// <param name="Status" example="409">The status of the answer.</param>
/// <param name="Detail" example="Nothing was recorded: Cure has not passed yet.">What happened, what was kept, what to do.</param>
/// <param name="RequestId" example="0HN7GLQ9B2K4T:00000003">Finds the request in the service's log.</param>
/// <param name="Errors">What is wrong in which field; null when no field is to blame.</param>
/// <param name="Checks">Everything that a closed gate asked; null when it was no gate.</param>
public sealed record ProblemDocument(
    string Type,
    string Title,
    int Status,
    string Detail,
    string RequestId,
    IReadOnlyDictionary<string, string[]>? Errors,
    IReadOnlyList<GateCheck>? Checks
);

/// <summary>
/// Errors as problem documents: what happened, what was kept, what to do; whatever the client accepts, because nothing else can be said to
/// it.
/// </summary>
public static class ProblemAnswers
{
    /// <summary>The media type of a problem.</summary>
    public const string MediaType = "application/problem+json";

    /// <summary>A refusal of the domain as a problem.</summary>
    public static Problem From(Refusal refusal) =>
        new Problem(
            ProblemKinds.Find(refusal.Code) ?? throw new InvalidOperationException($"'{refusal.Code}' is not among the kinds of problems"),
            refusal.Message,
            refusal
        );

    /// <summary>A problem of a kind; without words of its own those of its kind.</summary>
    public static Problem Of(ProblemKind kind, string? detail = null) => new Problem(kind, detail, null);

    /// <summary>A problem of a status that the framework gave, with the field that is to blame where there is one.</summary>
    public static Problem OfStatus(int status, string? detail = null, string? field = null) =>
        new Problem(
            ProblemKinds.OfStatus(status) with
            {
                Status = status,
            },
            detail,
            field is null || detail is null ? null : Refusal.Invalid(field, detail)
        );
}
