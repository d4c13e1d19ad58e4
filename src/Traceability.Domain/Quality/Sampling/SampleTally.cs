using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Stages.BoardSet;

namespace Traceability.Domain.Quality.Sampling;

/// <summary>What the sample of a lot has come to.</summary>
public enum SampleVerdict
{
    /// <summary>Too few boards were tested to say.</summary>
    Open,

    /// <summary>The whole sample was tested, with no more nonconforming boards than the plan accepts.</summary>
    Accepted,

    /// <summary>More nonconforming boards than the plan accepts.</summary>
    Failed,
}

/// <summary>
/// The boards of a panel lot tested so far, counted against the acceptance number of its sampling plan. A board counts by its first verdict
/// at the incoming check, corrections taken into account: a repaired board was nonconforming when it came. Boards outside the sample do not
/// count against the plan and are named beside it.
/// </summary>
/// <param name="Lot">Number of the lot.</param>
/// <param name="LotSize">N.</param>
/// <param name="Plan">The plan with n and Ac.</param>
/// <param name="Tested">Boards of the sample with a verdict.</param>
/// <param name="Nonconforming">Those among them that did not pass.</param>
/// <param name="NonconformingOutside">Boards outside the sample that did not pass.</param>
/// <remarks>
/// Source: ISO 2859-1:1999, 11.1 (acceptance by attributes, single sampling), from memory. Checks: published values F13,
/// <c>SampleTallyTests</c>.
/// </remarks>
public sealed record SampleTally(string Lot, int LotSize, SamplingPlan Plan, int Tested, int Nonconforming, int NonconformingOutside)
{
    /// <summary>A lot fails as soon as one board too many is nonconforming, however many are still to be tested.</summary>
    public SampleVerdict Verdict =>
        Nonconforming > Plan.Accept ? SampleVerdict.Failed
        : Tested >= Plan.SampleSize ? SampleVerdict.Accepted
        : SampleVerdict.Open;

    /// <summary>Counts; null when no board of the lot is sampled, or the lot has no size to sample from.</summary>
    /// <param name="lot">The panel lot.</param>
    /// <param name="boards">Every part that it was ever fitted in.</param>
    public static SampleTally? Of(Lot lot, IEnumerable<Dossier> boards)
    {
        ArgumentNullException.ThrowIfNull(lot);
        var tested = boards.Select(FirstCheck).OfType<(int Board, bool Conforms, double Limit)>().ToList();
        if (tested.Count == 0 || SampleOfLot.Of(lot, 1, tested[0].Limit) is not { } any)
        {
            return null;
        }

        var sample = tested.ToLookup(b => SampleOfLot.Of(lot, b.Board, tested[0].Limit)!.Contains);
        return new(
            lot.Number,
            any.LotSize,
            any.Plan,
            sample[true].Count(),
            sample[true].Count(b => !b.Conforms),
            sample[false].Count(b => !b.Conforms)
        );
    }

    /// <summary>The count in words.</summary>
    public string InWords()
    {
        var count = BoardTexts.LotTestedSoFar(Lot, Nonconforming, Tested, Plan.SampleSize, Plan.Accept);
        var all = NonconformingOutside == 0 ? count : BoardTexts.MoreOutsideTheSample(count, NonconformingOutside);
        return Verdict switch
        {
            SampleVerdict.Failed => BoardTexts.LotFailsItsPlan(all),
            SampleVerdict.Accepted => BoardTexts.LotIsAccepted(all),
            _ => all,
        };
    }

    private static (int Board, bool Conforms, double Limit)? FirstCheck(Dossier board)
    {
        foreach (var attempt in board.Attempts.Where(a => a.Closed))
        {
            if (
                board.Route.Find(attempt.Stage) is { } stage
                && PhantomCheck.SamplingLimitOf(stage) is { } limit
                && attempt.Reading(PhantomCheck.BoardNumber) is { Value: >= 1 and <= int.MaxValue } number
            )
            {
                return ((int)number.Value, attempt.Verdict == Records.Verdict.Pass, limit);
            }
        }

        return null;
    }
}
