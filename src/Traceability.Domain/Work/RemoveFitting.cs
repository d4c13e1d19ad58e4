using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Domain.Work;

/// <summary>Takes out what is fitted at a position; passes from the stage that fitted it no longer count.</summary>
public static class RemoveFitting
{
    /// <summary>Leads to the removal; what came out is free again (a lot's material is not given back).</summary>
    public static Decision<Removal> Decide(Dossier dossier, string position, string reason, Stamp stamp)
    {
        if (string.IsNullOrWhiteSpace(reason))
        {
            return Refusal.Invalid("reason", "say why it comes out");
        }

        if (!dossier.PresentFittings.TryGetValue(position, out var fitting))
        {
            var filled = dossier.PresentFittings.Keys.ToList();
            return filled.Count == 0
                ? Refusal.Conflict($"nothing is fitted in {dossier.Part.Serial}")
                : Refusal.Invalid("position", $"nothing is fitted in {dossier.Part.Serial} at '{position}'; filled positions: {string.Join(", ", filled)}");
        }

        if (dossier.Scrapped || dossier.Shipped is not null)
        {
            return Refusal.Conflict($"{dossier.Part.Serial} is {Words.Of(dossier.State())}");
        }

        if (Timing.OutOfOrder(dossier, stamp.OccurredAt) is { } outOfOrder)
        {
            return outOfOrder;
        }

        if (dossier.Around.FittedInSerial is { } parent)
        {
            return Refusal.Conflict($"{dossier.Part.Serial} is fitted in {parent}; take it out of {parent} first");
        }

        var fittedAt = dossier.Attempts.First(a => a.Id == fitting.AttemptId).Stage;
        if (dossier.OpenAttempt is { } open && open.Stage != fittedAt && dossier.Route.IsAtOrAfter(open.Stage, fittedAt))
        {
            return Refusal.Conflict(
                $"{dossier.Route.Find(open.Stage)?.Title} is open on {dossier.Part.Serial} and builds on what is at '{position}'; close or abandon it first");
        }

        var removal = new Removal(stamp.NewId(), dossier.Part.Id, fitting.Id, reason, stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        return Decision.Accept(removal, [removal]);
    }
}
