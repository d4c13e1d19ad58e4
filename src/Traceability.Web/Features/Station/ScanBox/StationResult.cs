using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Web.Features.Parts.Life;

namespace Traceability.Web.Features.Station.ScanBox;

/// <summary>
/// What a stage came to, or would come to if it were closed now: values with their meaning, findings, pictures of the files.
/// </summary>
/// <param name="Stage">The stage with its labels; null when the route no longer names it.</param>
/// <param name="Code">The stage's code.</param>
/// <param name="Verdict">The verdict.</param>
/// <param name="Readings">What it rests on.</param>
/// <param name="Findings">In words for the builder.</param>
/// <param name="By">Who ended it; null while it is open.</param>
/// <param name="At">When it ended; null while it is open.</param>
/// <param name="Charts">Pictures of its files.</param>
public sealed record StationResult(
    Stage? Stage,
    string Code,
    Verdict Verdict,
    IReadOnlyList<ReadingView> Readings,
    IReadOnlyList<string> Findings,
    Guid? By,
    DateTimeOffset? At,
    IReadOnlyList<ChartPair> Charts
)
{
    /// <summary>The findings that do not only repeat that a value above is outside its limits.</summary>
    public IEnumerable<string> FindingsBesideValues =>
        Findings.Where(f =>
            !Readings.Any(r => !r.Met && f.StartsWith($"{r.Reading.Characteristic} {r.Digits} ", StringComparison.Ordinal))
        );

    /// <summary>True while it is not closed yet.</summary>
    public bool IsPreview => At is null;
}
