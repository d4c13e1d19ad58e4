using Traceability.Domain.Gates;
using Traceability.Domain.Routes;
using Traceability.Domain.Scanning;
using Traceability.Web.Features.Parts.Work;

namespace Traceability.Web.Features.Station.ScanBox;

/// <summary>
/// The part on the bench: its dossier, the stage it is at (null when it is finished), that stage's gate, and what the stage still needs.
/// </summary>
/// <param name="Dossier">All that is known of the part.</param>
/// <param name="Stage">The stage that is open on it, or else its next one.</param>
/// <param name="Gate">May the stage start, or, while an attempt is open, may that attempt end?</param>
/// <param name="Needs">What the state machine is told.</param>
/// <param name="Standing">What the part is now.</param>
public sealed record PartAtBench(Dossier Dossier, Stage? Stage, GateVerdict? Gate, StageNeeds Needs, StandingAnswer Standing)
{
    /// <summary>The attempt now open, if any.</summary>
    public AttemptView? Open => Dossier.OpenAttempt;
}
