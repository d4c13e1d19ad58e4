using Traceability.Domain.Routes;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>A stage of a route, with all that its work needs.</summary>
/// <param name="Code" example="cure">Its code.</param>
/// <param name="Title" example="Cure">What it is called.</param>
/// <param name="Method" example="entered-limits">The method by which it is judged.</param>
/// <param name="Instructions">What to do, sentence by sentence.</param>
/// <param name="Cautions">What whoever works at it must heed.</param>
/// <param name="Slots">Positions to be filled with parts or lots.</param>
/// <param name="Characteristics">What is measured or computed.</param>
/// <param name="Evidence">Files that it asks for.</param>
/// <param name="MinimumOpenMinutes" example="480">How long it must be open before it may be closed, in minutes.</param>
/// <param name="Waits">How long after an earlier stage it may not begin.</param>
/// <param name="Windows">How long after an earlier stage it must have begun.</param>
/// <param name="InstrumentKinds">Kinds of instruments that must be named when it is opened.</param>
/// <param name="CheckedToday" example="true">True when they must have been checked against their references on that day.</param>
/// <param name="Qualification" example="tensioning">What whoever works at it must be qualified for; null when nothing.</param>
/// <param name="Loads" example="false">True when many parts may go through it in one load.</param>
/// <param name="AllowedAttempts" example="2">How often it may be tried; null when without end.</param>
/// <param name="ReworkReturnsTo" example="mount">The stage to which a part in rework goes back.</param>
/// <param name="NotByBuilderOf">Stages whose builder may not do this one.</param>
/// <param name="Match">How two fitted parts are matched; null when they are not.</param>
/// <param name="Parameters">What its method reads from the route.</param>
public sealed record StageAnswer(
    string Code,
    string Title,
    string Method,
    IReadOnlyList<string> Instructions,
    IReadOnlyList<string> Cautions,
    IReadOnlyList<SlotAnswer> Slots,
    IReadOnlyList<CharacteristicAnswer> Characteristics,
    IReadOnlyList<EvidenceNeed> Evidence,
    int? MinimumOpenMinutes,
    IReadOnlyList<Wait> Waits,
    IReadOnlyList<Window> Windows,
    IReadOnlyList<string> InstrumentKinds,
    bool CheckedToday,
    string? Qualification,
    bool Loads,
    int? AllowedAttempts,
    string? ReworkReturnsTo,
    IReadOnlyList<string> NotByBuilderOf,
    MatchRule? Match,
    ParametersAnswer Parameters
)
{
    internal static StageAnswer Of(Stage s) =>
        new(
            s.Code,
            s.Title,
            s.Method,
            s.Instructions,
            [.. s.Cautions.Select(c => Domain.Routes.Cautions.Texts[c])],
            [.. s.Slots.Select(x => new SlotAnswer(x.Position, x.Label, new(x.LotKind, x.PartKind), x.Required))],
            [
                .. s.Characteristics.Select(c => new CharacteristicAnswer(
                    c.Name,
                    c.Label,
                    c.Unit,
                    c.Nominal,
                    c.Lower,
                    c.Upper,
                    c.Resolution,
                    c.Entered,
                    c.Required,
                    c.ExpandedUncertainty,
                    c.ExpandedUncertainty is null ? null
                        : c.Guarded ? "guarded"
                        : "simple"
                )),
            ],
            s.Evidence,
            s.MinimumOpenMinutes,
            s.Waits,
            s.Windows,
            s.InstrumentKinds,
            s.CheckedToday,
            s.Qualification,
            s.Loads,
            s.AllowedAttempts,
            s.ReworkReturnsTo,
            s.NotByBuilderOf,
            s.Match,
            new(
                s.Parameters.ToleranceSource,
                s.Parameters.Phases,
                s.Parameters.Mask,
                s.Parameters.MaskedEvidence,
                s.Parameters.Numbers.Count == 0 ? null : s.Parameters.Numbers,
                s.Parameters.ReferenceCurve,
                s.Parameters.Terminals
            )
        );
}
