using System.Diagnostics.CodeAnalysis;
using Traceability.Domain.Gates;
using Traceability.Domain.Routes;

namespace Traceability.Domain.Work;

/// <summary>What every command inside an attempt asks first: is this attempt the one that is open?</summary>
internal static class WhileOpen
{
    public static bool Find(
        Dossier dossier, Guid attemptId, [NotNullWhen(true)] out AttemptView? open, [NotNullWhen(true)] out Stage? stage, [NotNullWhen(false)] out Refusal? refusal)
    {
        open = dossier.Attempts.FirstOrDefault(a => a.Id == attemptId);
        stage = open is null ? null : dossier.Route.Find(open.Stage);
        refusal = open switch
        {
            null => Refusal.NotFound($"{dossier.Part.Serial} has no attempt {attemptId}"),
            { Ending: { Abandoned: true } e } => Refusal.Conflict($"this attempt was abandoned: {e.Note}"),
            { Ending: { } e } => Refusal.Conflict($"this attempt was closed at {e.OccurredAt:u} with the verdict {(e.Verdict is { } verdict ? Words.Of(verdict) : "abandoned")}"),
            _ when stage is null => Refusal.Conflict($"the route of {dossier.Part.Serial} has no stage '{open.Stage}'"),
            _ => null,
        };
        return refusal is null;
    }
}
