using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Domain.Work.BenchWork;

/// <summary>Abandons an attempt; what was fitted in it is free again.</summary>
public static partial class Attempts
{
    /// <summary>Leads to the ending and to the removal of everything fitted in this attempt.</summary>
    public static Decision<AttemptEnding> Abandon(Dossier dossier, Guid attemptId, string reason, Stamp stamp)
    {
        if (!WhileOpen.Find(dossier, attemptId, out var open, out _, out var refusal))
        {
            return refusal;
        }

        if (string.IsNullOrWhiteSpace(reason))
        {
            return Refusal.Invalid("reason", RefusalTexts.SayWhyTheAttemptIsAbandoned);
        }

        var ending = new AttemptEnding(
            stamp.NewId(),
            dossier.Part.Id,
            open.Id,
            null,
            reason,
            null,
            null,
            [],
            false,
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        var present = dossier.PresentFittings.Values.Select(f => f.Id).ToHashSet();
        var removals = open
            .Fittings.Where(f => present.Contains(f.Id))
            .Select(f => new Removal(
                stamp.NewId(),
                dossier.Part.Id,
                f.Id,
                RefusalTexts.AttemptAbandoned(reason),
                stamp.By,
                stamp.OccurredAt,
                stamp.RecordedAt
            ));
        return Decision.Accept(ending, [ending, .. removals]);
    }
}
