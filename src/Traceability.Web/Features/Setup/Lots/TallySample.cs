using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Sampling;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.BoardSet;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Lots;

/// <summary>Counts the tested boards of a panel lot against its sampling plan.</summary>
public sealed class TallySample(WorkshopContext db, DossierReader dossiers)
{
    /// <summary>How many boards of a lot were tested, against its sampling plan.</summary>
    /// <param name="LotSize" example="100">How many boards the lot has.</param>
    /// <param name="SampleSize" example="13">How many of them the plan has tested.</param>
    /// <param name="Accept" example="1">With at most so many that do not conform the lot is accepted.</param>
    /// <param name="Reject" example="2">With so many it is rejected.</param>
    /// <param name="Tested" example="13">How many were tested so far.</param>
    /// <param name="Nonconforming" example="0">How many of the sample do not conform.</param>
    /// <param name="NonconformingOutside" example="0">How many others do not conform.</param>
    /// <param name="Verdict" example="passed">What the count comes to.</param>
    /// <param name="Words" example="13 of 13 tested, none failed">The same in words.</param>
    public sealed record Output(
        int LotSize,
        int SampleSize,
        int Accept,
        int Reject,
        int Tested,
        int Nonconforming,
        int NonconformingOutside,
        [property: OneOf(typeof(SampleVerdict))] string Verdict,
        string Words
    )
    {
        public static Output? Of(SampleTally? t) =>
            t is null
                ? null
                : new(
                    t.LotSize,
                    t.Plan.SampleSize,
                    t.Plan.Accept,
                    t.Plan.Reject,
                    t.Tested,
                    t.Nonconforming,
                    t.NonconformingOutside,
                    t.Verdict.ToString().ToLowerInvariant(),
                    t.InWords()
                );
    }

    /// <summary>
    /// The count for a lot as it is stored; <paramref name="justClosed"/> stands for its own part, which is not stored yet.
    /// </summary>
    public async Task<SampleTally?> RunAsync(Lot lot, Dossier? justClosed, CancellationToken cancellation)
    {
        var boards = await db.Set<Fitting>()
            .Where(f => f.LotId == lot.Id)
            .Join(db.Set<Part>().Where(p => p.Kind == PartKinds.BoardSet), f => f.PartId, p => p.Id, (f, p) => p.Id)
            .Distinct()
            .ToListAsync(cancellation);
        var found = await dossiers.LoadAsync([.. boards.Where(id => id != justClosed?.Part.Id)], cancellation);
        return SampleTally.Of(lot, justClosed is null ? found.Values : found.Values.Append(justClosed));
    }

    /// <summary>What is to be said when a stage that samples was closed and its lot fails; nothing otherwise.</summary>
    public async Task<IReadOnlyList<string>> SayAsync(Dossier closed, Stage stage, GateContext context, CancellationToken cancellation) =>
        PhantomCheck.SamplingLimitOf(stage) is not null
        && context.Inside.Values.OfType<LotInput>().FirstOrDefault() is { } panel
        && await RunAsync(panel.Lot, closed, cancellation) is { Verdict: SampleVerdict.Failed } failed
            ? [failed.InWords()]
            : [];
}
