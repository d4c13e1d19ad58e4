using Traceability.Domain.Records;
using Traceability.Domain.Routes;

namespace Traceability.Domain.Gates;

/// <summary>How far a part has come: which passes count, which stage is next, and the one word for its state.</summary>
public static class Progress
{
    /// <summary>
    /// The attempt whose pass of <paramref name="stage"/> counts, or null. A pass no longer counts once a rework went back to that stage
    /// or an earlier one (a disposition, or the wish that it be measured again), or once something that was fitted at that stage or an
    /// earlier one was taken out again. A failed attempt counts when a concession or regrade was decided for it.
    /// </summary>
    public static AttemptView? CountingPass(this Dossier dossier, string stage) =>
        dossier.Attempts.LastOrDefault(a => a.Stage == stage && a.Closed && (a.Passed || Conceded(dossier, a)) && !Undone(dossier, a));

    /// <summary>True when the stage is passed and the pass counts.</summary>
    public static bool IsPassed(this Dossier dossier, string stage) => dossier.CountingPass(stage) is not null;

    /// <summary>The first stage of the route without a counting pass; null when the part is finished.</summary>
    public static Stage? NextStage(this Dossier dossier) => dossier.Route.Stages.FirstOrDefault(s => !dossier.IsPassed(s.Code));

    /// <summary>True when every stage is passed and counts.</summary>
    public static bool IsFinished(this Dossier dossier) => dossier.NextStage() is null;

    /// <summary>The one word that lists and the contract show.</summary>
    public static PartState State(this Dossier dossier) =>
        dossier.Scrapped ? PartState.Scrapped
        : dossier.Shipped is not null ? PartState.Shipped
        : dossier.OpenHolds().Any() ? PartState.OnHold
        : dossier.OpenNonconformities().Any() ? PartState.Nonconforming
        : dossier.Around.FittedInSerial is not null ? PartState.Fitted
        : dossier.OpenAttempt is not null ? PartState.InWork
        : dossier.IsFinished() ? PartState.Finished
        : PartState.Ready;

    /// <summary>The latest counting value of a characteristic, whichever stage took it.</summary>
    public static ReadingView? CountingReading(this Dossier dossier, string characteristic) =>
        dossier
            .Route.Stages.Reverse()
            .Select(s => dossier.CountingPass(s.Code)?.Reading(characteristic))
            .FirstOrDefault(r => r is not null);

    /// <summary>
    /// The reading of a characteristic that counted at a moment of recording, with the value that counts now: which attempt counted is
    /// history, and a corrected value takes the place of the wrong one.
    /// </summary>
    public static ReadingView? ReadingThatCounted(this Dossier dossier, DateTimeOffset moment, string characteristic) =>
        dossier.AsOf(moment).CountingReading(characteristic)?.Reading.Id is { } id
            ? dossier.Attempts.SelectMany(a => a.Readings).First(r => r.Reading.Id == id)
            : null;

    private static bool Conceded(Dossier dossier, AttemptView attempt)
    {
        var raised = dossier.Of<Nonconformity>().Where(n => n.AttemptId == attempt.Id).Select(n => n.Id).ToHashSet();
        return raised.Count > 0
            && dossier
                .Of<Disposition>()
                .Any(d => raised.Contains(d.NonconformityId) && d.Kind is (DispositionKind.Concession or DispositionKind.Regrade));
    }

    private static bool Undone(Dossier dossier, AttemptView attempt) =>
        Setbacks(dossier).Any(s => s.RecordedAt > attempt.Ending!.RecordedAt && dossier.Route.IsAtOrAfter(attempt.Stage, s.Stage));

    private static IEnumerable<(string Stage, DateTimeOffset RecordedAt)> Setbacks(Dossier dossier)
    {
        foreach (
            var d in dossier
                .Of<Disposition>()
                .Where(d => d is { Kind: DispositionKind.Rework or DispositionKind.Repair, ReturnTo: not null })
        )
        {
            yield return (d.ReturnTo!, d.RecordedAt);
        }

        foreach (var d in dossier.Of<DoubtDecision>().Where(d => d.ReturnTo is not null))
        {
            yield return (d.ReturnTo!, d.RecordedAt);
        }

        foreach (var r in dossier.Of<Removal>())
        {
            var fitting = dossier.Of<Fitting>().First(f => f.Id == r.FittingId);
            yield return (dossier.Attempts.First(a => a.Id == fitting.AttemptId).Stage, r.RecordedAt);
        }
    }
}

/// <summary>The one word for where a part stands.</summary>
public enum PartState
{
    /// <summary>Waits for its next stage.</summary>
    Ready,

    /// <summary>An attempt is open.</summary>
    InWork,

    /// <summary>A nonconformity waits for a decision.</summary>
    Nonconforming,

    /// <summary>Stopped by a hold on the part itself.</summary>
    OnHold,

    /// <summary>Every stage of its route is passed.</summary>
    Finished,

    /// <summary>Fitted in another part.</summary>
    Fitted,

    /// <summary>Left the workshop.</summary>
    Shipped,

    /// <summary>Not to be used.</summary>
    Scrapped,
}
