using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Parts.History;

/// <summary>One thing that happened to a part: what, in words, when, by whom; and what belongs to that sort of thing.</summary>
public sealed record HistoryEntry(Guid Id, string What, string Words, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt, Who By)
{
    /// <summary>The stage, its attempt, and where and with what it was done.</summary>
    public string? Stage { get; init; }

    public Guid? Attempt { get; init; }

    public string? Station { get; init; }

    public IReadOnlyList<string>? Instruments { get; init; }

    /// <summary>A reading as it was first taken, and what superseded it.</summary>
    public ReadingAnswer? Reading { get; init; }

    public IReadOnlyList<CorrectionInHistory>? Corrections { get; init; }

    /// <summary>Of a correction: the reading that it supersedes, and its new value.</summary>
    public Guid? Corrects { get; init; }

    public NumberText? Value { get; init; }

    /// <summary>Of an ending: the verdict then, and what was found.</summary>
    public string? Verdict { get; init; }

    public IReadOnlyList<string>? Findings { get; init; }

    /// <summary>Of a fitting or removal: the position, and the serial or lot number on the other side.</summary>
    public string? Position { get; init; }

    public string? Item { get; init; }

    public EvidenceAnswer? Evidence { get; init; }

    /// <summary>A code, such as that of a nonconformity, and the reason given.</summary>
    public string? Code { get; init; }

    public string? Reason { get; init; }
}

/// <summary>A correction beneath the reading that it supersedes.</summary>
public sealed record CorrectionInHistory(Guid Id, NumberText Value, bool Met, string Reason, Who By, DateTimeOffset At);
