using Traceability.Domain.Records;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;

namespace Traceability.Web.Features.Service.Returns;

/// <summary>Something found on a returned unit.</summary>
/// <param name="Id" example="019a1c52-7d1e-7b4e-9c41-2f5d3e8a6b10">The finding's id.</param>
/// <param name="Code" example="flux-on-ring">Its code.</param>
/// <param name="Description" example="flux left on the ring">What it looks like, in words.</param>
/// <param name="At" example="2026-01-31T14:20:00Z">When it was found.</param>
/// <param name="By">Who found it.</param>
public sealed record FindingAnswer(Guid Id, string Code, string Description, DateTimeOffset At, Who By);

/// <summary>How a return came out.</summary>
/// <param name="Kind" example="repaired">How it came out.</param>
/// <param name="Reason" example="ring cleaned and dried">Why it is said so.</param>
/// <param name="At" example="2026-01-31T14:20:00Z">When it was said.</param>
/// <param name="By">Who said it.</param>
public sealed record OutcomeAnswer(ReturnOutcomeKind Kind, string Reason, DateTimeOffset At, Who By);

/// <summary>A return with what was found and done.</summary>
/// <param name="Id" example="019a1c52-7d1e-7b4e-9c41-2f5d3e8a6b10">The return's id.</param>
/// <param name="Serial" example="US-0034">The unit's serial.</param>
/// <param name="Model" example="TARN-2">The unit's model.</param>
/// <param name="Complaint" example="crackles on damp evenings">What is wrong with it, in the customer's words.</param>
/// <param name="CustomerReference" example="ORDER-7">The customer's own number for the matter.</param>
/// <param name="ReturnedAt" example="2026-01-31T14:20:00Z">When it came back.</param>
/// <param name="ReceivedBy">Who took it in.</param>
/// <param name="Open" example="true">False once it is closed.</param>
/// <param name="Findings">What was found, in the order of recording.</param>
/// <param name="Outcome">How it came out; null as long as nobody said.</param>
/// <param name="Action" example="cleaned, dried, measured again">What was done; null while it is open.</param>
/// <param name="ClosedAt" example="2026-02-02T09:00:00Z">When it was closed.</param>
/// <param name="ClosedBy">Who closed it.</param>
/// <param name="Standing">What the unit is now.</param>
public sealed record ReturnRow(
    Guid Id,
    string Serial,
    string Model,
    string Complaint,
    string? CustomerReference,
    DateTimeOffset ReturnedAt,
    Who ReceivedBy,
    bool Open,
    IReadOnlyList<FindingAnswer> Findings,
    OutcomeAnswer? Outcome,
    string? Action,
    DateTimeOffset? ClosedAt,
    Who? ClosedBy,
    StandingAnswer Standing
);
