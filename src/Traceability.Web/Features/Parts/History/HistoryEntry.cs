using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Parts.History;

/// <summary>One thing that happened to a part: what, in words, when, by whom; and what belongs to that sort of thing.</summary>
/// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c03">The fact's id.</param>
/// <param name="What" example="reading">The sort of thing that happened.</param>
/// <param name="Words" example="ringResonanceHz 905.2 Hz">The same in words.</param>
/// <param name="OccurredAt" example="2026-11-25T08:05:00Z">When it happened.</param>
/// <param name="RecordedAt" example="2026-11-25T08:05:02Z">When it was recorded.</param>
/// <param name="By">Who did it.</param>
public sealed record HistoryEntry(Guid Id, string What, string Words, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt, Who By)
{
    /// <summary>The code of the stage; of a disposition the one that the part returns to.</summary>
    /// <example>ring-resonance</example>
    public string? Stage { get; init; }

    /// <summary>The attempt that it belongs to.</summary>
    /// <example>0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01</example>
    public Guid? Attempt { get; init; }

    /// <summary>The station at which the attempt was done.</summary>
    /// <example>FILM-1</example>
    public string? Station { get; init; }

    /// <summary>The instruments that the attempt was done with.</summary>
    public IReadOnlyList<string>? Instruments { get; init; }

    /// <summary>A reading as it was first taken.</summary>
    public ReadingAnswer? Reading { get; init; }

    /// <summary>What superseded the reading.</summary>
    public IReadOnlyList<CorrectionInHistory>? Corrections { get; init; }

    /// <summary>Of a correction: the reading that it supersedes.</summary>
    /// <example>0199c3d4-7a10-7c20-9b11-2f6d5e8a4c02</example>
    public Guid? Corrects { get; init; }

    /// <summary>Of a correction: the new value, in the reading's unit.</summary>
    /// <example>905.2</example>
    public NumberText? Value { get; init; }

    /// <summary>Of an ending: the verdict as it was given then.</summary>
    /// <example>pass</example>
    public string? Verdict { get; init; }

    /// <summary>Of an ending: what was found, in words.</summary>
    public IReadOnlyList<string>? Findings { get; init; }

    /// <summary>Of a fitting or removal: the position.</summary>
    /// <example>front-diaphragm</example>
    public string? Position { get; init; }

    /// <summary>What else is concerned: the serial or lot number fitted, the carrier, the instrument, the customer's reference.</summary>
    /// <example>DD26-00417</example>
    public string? Item { get; init; }

    /// <summary>A kept file.</summary>
    public EvidenceAnswer? Evidence { get; init; }

    /// <summary>A code, such as that of a nonconformity or a disposition.</summary>
    /// <example>rework</example>
    public string? Code { get; init; }

    /// <summary>The reason that was given.</summary>
    /// <example>scratched in handling</example>
    public string? Reason { get; init; }
}

/// <summary>A correction beneath the reading that it supersedes.</summary>
/// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c04">The correction's id.</param>
/// <param name="Value" example="905.2">The new value, in the reading's unit.</param>
/// <param name="Met" example="true">Whether it is accepted.</param>
/// <param name="Reason" example="two digits were exchanged">Why the reading was wrong.</param>
/// <param name="By">Who corrected it.</param>
/// <param name="At" example="2026-11-25T09:30:00Z">When it was corrected.</param>
public sealed record CorrectionInHistory(Guid Id, NumberText Value, bool Met, string Reason, Who By, DateTimeOffset At);
