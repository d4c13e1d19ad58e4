using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Domain.Work.BenchWork;

/// <summary>Takes out what is fitted at a position; passes from the stage that fitted it no longer count.</summary>
public static partial class Fittings
{
    /// <summary>
    /// Leads to the removal; what came out is free again (a lot's material is not given back). While the stage that fitted it is still
    /// open, taking out is a piece of that stage's work, for those who may do it; the context says who does.
    /// </summary>
    public static Decision<Removal> Remove(Dossier dossier, string position, string reason, GateContext context, Stamp stamp)
    {
        if (string.IsNullOrWhiteSpace(reason))
        {
            return Refusal.Invalid("reason", RefusalTexts.SayWhyItComesOut);
        }

        if (!dossier.PresentFittings.TryGetValue(position, out var fitting))
        {
            var filled = dossier.PresentFittings.Keys.ToList();
            return filled.Count == 0
                ? Refusal.Conflict(RefusalTexts.NothingIsFittedIn(dossier.Part.Serial))
                : Refusal.Invalid("position", RefusalTexts.NothingIsFittedAt(dossier.Part.Serial, position, string.Join(", ", filled)));
        }

        if (dossier.Scrapped || dossier.Shipped is not null)
        {
            return Refusal.Conflict(RefusalTexts.IsInState(dossier.Part.Serial, Words.Of(dossier.State())));
        }

        if (Timing.OutOfOrder(dossier, stamp.OccurredAt) is { } outOfOrder)
        {
            return outOfOrder;
        }

        if (dossier.Around.FittedInSerial is { } parent)
        {
            return Refusal.Conflict(RefusalTexts.IsFittedInTakeItOutFirst(dossier.Part.Serial, parent), RefusalCode.PartIsFitted);
        }

        var fittedAt = dossier.Attempts.First(a => a.Id == fitting.AttemptId).Stage;
        if (dossier.OpenAttempt is { } open && open.Stage != fittedAt && dossier.Route.IsAtOrAfter(open.Stage, fittedAt))
        {
            return Refusal.Conflict(
                RefusalTexts.OpenStageBuildsOnIt(dossier.Route.Find(open.Stage)?.Title, dossier.Part.Serial, position),
                RefusalCode.AttemptOpen
            );
        }

        if (
            dossier.OpenAttempt is { } own
            && own.Stage == fittedAt
            && !WhileOpen.Find(dossier, own.Id, context, out _, out _, out var mayNotWork)
        )
        {
            return mayNotWork;
        }

        var removal = new Removal(stamp.NewId(), dossier.Part.Id, fitting.Id, reason, stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        return Decision.Accept(removal, [removal]);
    }
}
