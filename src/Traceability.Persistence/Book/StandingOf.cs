using Traceability.Domain.Gates;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Book;

/// <summary>Derives a part's standing from its dossier; the same function serves every write and the rebuild.</summary>
public static class StandingOf
{
    /// <summary>Brings a standing up to date.</summary>
    public static void Update(PartStanding standing, Dossier dossier, DateTimeOffset at)
    {
        standing.RouteId = dossier.Part.RouteId;
        standing.Stage = dossier.NextStage()?.Code;
        standing.State = Words.Of(dossier.State());
        standing.Finished = dossier.IsFinished();
        standing.CarrierCode = dossier.Around.CarrierCode;
        standing.OpenAttemptId = dossier.OpenAttempt?.Id;
        standing.OpenAttemptBy = dossier.OpenAttempt?.Attempt.By;
        standing.ChangedAt = at;
    }
}
