using Traceability.Domain.Records;
using Traceability.Domain.Values.Limits;

namespace Traceability.Domain.Routes;

/// <summary>
/// Something measurable with its limits, in the unit named. A null limit does not judge. A value that equals a limit meets it.
/// </summary>
/// <param name="Name">Name used in readings, with its unit at the end (<c>resonanceHz</c>).</param>
/// <param name="Label">The words shown to people.</param>
/// <param name="Unit">Unit from the closed list of units.</param>
/// <param name="Nominal">The value aimed at, if any.</param>
/// <param name="Lower">Lower limit, inclusive.</param>
/// <param name="Upper">Upper limit, inclusive.</param>
/// <param name="Resolution">Smallest step that makes sense to enter.</param>
/// <param name="Entered">True when a person or instrument supplies it; false when the stage's method computes it.</param>
/// <param name="OnCertificate">True when the birth certificate shows it.</param>
/// <param name="Required">False when the stage may be closed without it.</param>
public sealed record Characteristic(
    string Name,
    string Label,
    string Unit,
    decimal? Nominal,
    decimal? Lower,
    decimal? Upper,
    decimal? Resolution,
    bool Entered,
    bool OnCertificate,
    bool Required = true
)
{
    /// <summary>U of its values with coverage factor 2, in its unit; null when the route states none.</summary>
    public decimal? ExpandedUncertainty { get; init; }

    /// <summary>
    /// True when a value must be shown to conform (guarded acceptance); false when the limits alone judge (simple acceptance).
    /// </summary>
    public bool Guarded { get; init; }

    /// <summary>
    /// True for those that say how the process runs: shown on the birth certificate and judged by a limit. Room air and counts of pieces
    /// are not.
    /// </summary>
    public bool IsMain => OnCertificate && (Lower is not null || Upper is not null);

    /// <summary>The limits with the uncertainty and the rule.</summary>
    public Acceptance Acceptance => new(Lower, Upper, ExpandedUncertainty, Guarded);

    /// <summary>
    /// True when <paramref name="value"/> conforms: within the limits, both included, and under guarded acceptance clear of the guard
    /// bands.
    /// </summary>
    public bool IsMetBy(decimal value) => Acceptance.Judge(value) == Conformity.Met;

    /// <summary>True when this reading is of this characteristic.</summary>
    public bool Matches(Reading reading) => reading.Characteristic == Name;

    /// <summary>The limits in words: "880 to 920 Hz", "at least 100 GOhm", "no limit".</summary>
    public string LimitsInWords() =>
        (Lower, Upper) switch
        {
            ({ } lower, { } upper) => RouteTexts.FromTo(lower, upper, Unit),
            ({ } lower, null) => RouteTexts.AtLeast(lower, Unit),
            (null, { } upper) => RouteTexts.AtMost(upper, Unit),
            _ => RouteTexts.NoLimit,
        };
}
