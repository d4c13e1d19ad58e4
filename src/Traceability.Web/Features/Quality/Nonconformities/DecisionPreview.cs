using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Standings;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;

namespace Traceability.Web.Features.Quality.Nonconformities;

/// <summary>What a decision would touch, computed by the same rule that makes it, before anything is written.</summary>
public sealed record DecisionPreview(
    Refusal? Refusal,
    string StateBefore,
    string StateAfter,
    IReadOnlyList<string> StagesToRepeat,
    string? NextStage,
    string? FreedCarrier,
    string? FittedIn
)
{
    /// <summary>Tries the decision on a dossier. The reasons are not asked for yet.</summary>
    public static DecisionPreview Of(
        Dossier dossier,
        Guid nonconformity,
        DispositionKind kind,
        string? returnTo,
        Actor actor,
        GateContext now
    )
    {
        var decision = Dispositions.Decide(
            dossier,
            nonconformity,
            kind,
            returnTo,
            null,
            "to be given",
            actor.Alone("to be given"),
            new Stamp(actor.PersonId, now.At, now.At, Guid.CreateVersion7)
        );
        if (decision.Refusal is { } refusal)
        {
            return new(refusal, WordOf(dossier), WordOf(dossier), [], null, null, dossier.Around.FittedInSerial);
        }

        var after = dossier.With(decision.Facts);
        return new(
            null,
            WordOf(dossier),
            WordOf(after),
            [.. dossier.Route.Stages.Where(s => dossier.IsPassed(s.Code) && !after.IsPassed(s.Code)).Select(s => s.Title)],
            after.Scrapped ? null : after.NextStage()?.Title,
            decision.Facts.OfType<CarrierRelease>().FirstOrDefault()?.CarrierCode,
            dossier.Around.FittedInSerial
        );

        string WordOf(Dossier part) => Words.Of(Standing.Of(part, now).Code);
    }
}
