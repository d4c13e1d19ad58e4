using System.Diagnostics.CodeAnalysis;
using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;

namespace Traceability.Domain.Work.BenchWork;

/// <summary>What every command inside an attempt asks first: is this attempt the one that is open?</summary>
internal static class WhileOpen
{
    public static bool Find(
        Dossier dossier,
        Guid attemptId,
        [NotNullWhen(true)] out AttemptView? open,
        [NotNullWhen(true)] out Stage? stage,
        [NotNullWhen(false)] out Refusal? refusal
    )
    {
        open = dossier.Attempts.FirstOrDefault(a => a.Id == attemptId);
        stage = open is null ? null : dossier.Route.Find(open.Stage);
        refusal = open switch
        {
            null => Refusal.NotFound(RefusalTexts.HasNoAttempt(dossier.Part.Serial, attemptId)),
            { Ending: { Abandoned: true } e } => Refusal.Conflict(RefusalTexts.AttemptWasAbandoned(e.Note), RefusalCode.AttemptEnded),
            { Ending: { } e } => Refusal.Conflict(
                RefusalTexts.AttemptWasClosed(e.OccurredAt, e.Verdict is { } verdict ? Words.Of(verdict) : "abandoned"),
                RefusalCode.AttemptEnded
            ),
            _ when stage is null => Refusal.Conflict(RefusalTexts.RouteHasNoStageAnyMore(dossier.Part.Serial, open.Stage)),
            _ => null,
        };
        return refusal is null;
    }

    /// <summary>The same for whoever works on it: that person must be one who may do the stage.</summary>
    public static bool Find(
        Dossier dossier,
        Guid attemptId,
        GateContext context,
        [NotNullWhen(true)] out AttemptView? open,
        [NotNullWhen(true)] out Stage? stage,
        [NotNullWhen(false)] out Refusal? refusal
    )
    {
        if (!Find(dossier, attemptId, out open, out stage, out refusal))
        {
            return false;
        }

        if (context.At < open.Attempt.OccurredAt - ClockSkew.Allowed)
        {
            refusal = Refusal.Conflict(RefusalTexts.OccurredBeforeItBegan(context.At, open.Attempt.OccurredAt), RefusalCode.OutOfOrder);
        }
        else if (Gatekeeper.EvaluatePerson(dossier, stage, context) is { Open: false } gate)
        {
            refusal = Refusal.GateClosed(gate);
        }

        return refusal is null;
    }
}
