using Traceability.Domain.Routes;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>What a position takes: a lot of a kind, or a part of a kind.</summary>
/// <param name="LotKind" example="film">The kind of lot; null when it takes a part.</param>
/// <param name="PartKind" example="diaphragm">The kind of part; null when it takes a lot.</param>
public sealed record AcceptsAnswer(string? LotKind, string? PartKind);

/// <summary>A position to be filled.</summary>
/// <param name="Position" example="front">Its code.</param>
/// <param name="Label" example="Front diaphragm">What it is called.</param>
/// <param name="Accepts">What it takes.</param>
/// <param name="Required" example="true">False when it may stay empty.</param>
public sealed record SlotAnswer(string Position, string Label, AcceptsAnswer Accepts, bool Required);

/// <summary>Something that is measured or computed at a stage; limits are in its unit.</summary>
/// <param name="Name" example="ringHz">Its name.</param>
/// <param name="Label" example="Resonance">What it is called.</param>
/// <param name="Unit" example="Hz">Its unit.</param>
/// <param name="Nominal" example="900">What it should be.</param>
/// <param name="Lower" example="880">The lower limit; null when there is none.</param>
/// <param name="Upper" example="920">The upper limit; null when there is none.</param>
/// <param name="Resolution" example="0.1">The smallest step in which it is read.</param>
/// <param name="Entered" example="true">True when it is entered, false when the method computes it.</param>
/// <param name="Required" example="true">False when the stage may end without it.</param>
/// <param name="ExpandedUncertainty" example="1.5">Expanded uncertainty (k = 2); null when it is judged without.</param>
/// <param name="DecisionRule" example="guarded">How the uncertainty counts at the limits; null without one.</param>
public sealed record CharacteristicAnswer(
    string Name,
    string Label,
    string Unit,
    decimal? Nominal,
    decimal? Lower,
    decimal? Upper,
    decimal? Resolution,
    bool Entered,
    bool Required,
    decimal? ExpandedUncertainty,
    [property: OneOf("DecisionRule", "guarded", "simple")] string? DecisionRule
);

/// <summary>What a stage's method reads from the route; null is what it does not read.</summary>
/// <param name="ToleranceSource" example="house rule 4">Where the tolerances come from.</param>
/// <param name="Phases">Phases of a climate soak, in order.</param>
/// <param name="Mask">Corners of the mask of a frequency response.</param>
/// <param name="MaskedEvidence">Names of the files that are held against the mask.</param>
/// <param name="Numbers">Numbers by name, in the unit that the name ends in.</param>
/// <param name="ReferenceCurve">The curve that responses are compared with.</param>
/// <param name="Terminals">Connections that are tested.</param>
public sealed record ParametersAnswer(
    string? ToleranceSource,
    IReadOnlyList<SoakPhaseParameters>? Phases,
    IReadOnlyList<MaskCorner>? Mask,
    IReadOnlyList<string>? MaskedEvidence,
    IReadOnlyDictionary<string, decimal>? Numbers,
    IReadOnlyList<CurvePoint>? ReferenceCurve,
    IReadOnlyList<TestConnection>? Terminals
);
