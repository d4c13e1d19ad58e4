using Traceability.Domain.Records;

namespace Traceability.Domain.Stages.BoardSet;

/// <summary>
/// Which boards of a panel lot are tested fully. The sample size comes from ISO 2859-1 (<see cref="SamplingPlan"/>, level II) for the size
/// of the lot and the route's acceptance quality limit; the sample is spread evenly over the numbers of the boards in the lot, so that
/// anybody can say beforehand which they are: board k belongs to it when ceil(k n / N) &gt; ceil((k - 1) n / N).
/// </summary>
/// <param name="Board">k, number of the board in its lot, from 1.</param>
/// <param name="LotSize">N, boards in the lot.</param>
/// <param name="Plan">The plan, with n and the acceptance number.</param>
/// <remarks>The even spread is the workshop's own rule. Checks: published values F13, <c>BoardMethodTests</c>.</remarks>
public sealed record SampleOfLot(int Board, int LotSize, SamplingPlan Plan)
{
    /// <summary>True when this board is tested fully. A board numbered beyond its lot always is.</summary>
    public bool Contains => Board > LotSize || Share(Board) > Share(Board - 1);

    /// <summary>The sample for a board of a lot; null for a lot of fewer than two, where every board is tested.</summary>
    /// <param name="lot">The panel lot.</param>
    /// <param name="board">Number of the board in it; 1 or more.</param>
    /// <param name="qualityLimitPct">Acceptance quality limit, % nonconforming, one of <see cref="SamplingPlan.Limits"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number below 1, or a limit that is not in the table.</exception>
    public static SampleOfLot? Of(Lot lot, int board, double qualityLimitPct)
    {
        ArgumentNullException.ThrowIfNull(lot);
        ArgumentOutOfRangeException.ThrowIfLessThan(board, 1);
        return lot.Quantity is >= 2 and <= int.MaxValue
            ? new(board, (int)lot.Quantity, SamplingPlan.ForLot((int)lot.Quantity, qualityLimitPct))
            : null;
    }

    /// <summary>The plan in words.</summary>
    public string InWords(string lotNumber) =>
        Plan.IsWholeLot ? BoardTexts.AllBoardsAreTestedFully(lotNumber, LotSize)
        : Contains ? BoardTexts.BoardIsInTheSample(lotNumber, LotSize, Plan.SampleSize, Plan.Letter, Plan.Accept, Plan.Reject, Board)
        : BoardTexts.BoardIsNotInTheSample(lotNumber, LotSize, Plan.SampleSize, Plan.Letter, Plan.Accept, Plan.Reject, Board);

    private long Share(int board) => ((long)board * Plan.SampleSize + LotSize - 1) / LotSize;
}
