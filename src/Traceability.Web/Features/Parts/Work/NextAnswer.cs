using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>The next thing to do with a part, in the words of its gate.</summary>
/// <param name="Stage" example="insulation">The code of the next stage; null when every stage is done.</param>
/// <param name="Title" example="Insulation test">Its title, or what may be done with the finished part.</param>
/// <param name="State" example="waiting">Where the stage stands for the part; the part's state when every stage is done.</param>
/// <param name="OpensAt" example="2026-11-25T14:20:00Z">From when it may start, when only time keeps it closed.</param>
/// <param name="Because" example="the recovery ends at 14:20">The first thing that keeps it closed.</param>
public sealed record NextAnswer(string? Stage, string Title, string State, DateTimeOffset? OpensAt, string? Because)
{
    public static NextAnswer Of(Dossier d, GateContext context)
    {
        if (d.NextStage() is not { } stage)
        {
            return new(
                null,
                d.Part.Kind == PartKinds.Unit ? PartsSentences.FinishedForACertificate : PartsSentences.FinishedReadyToBeFitted,
                Words.Of(d.State()),
                null,
                null
            );
        }

        var gate = Gatekeeper.Evaluate(d, stage, context with { Instruments = null, Inputs = null });
        return new(stage.Code, stage.Title, Words.Of(gate.State), gate.OpensAt, gate.Unmet.FirstOrDefault()?.Because);
    }
}
