namespace Traceability.Domain.Stages.BoardSet;

/// <summary>Inspection levels of ISO 2859-1: how large a sample is for the size of the lot.</summary>
public enum InspectionLevel
{
    /// <summary>Special level S-1.</summary>
    S1,

    /// <summary>Special level S-2.</summary>
    S2,

    /// <summary>Special level S-3.</summary>
    S3,

    /// <summary>Special level S-4.</summary>
    S4,

    /// <summary>General level I.</summary>
    I,

    /// <summary>General level II, the usual one.</summary>
    II,

    /// <summary>General level III.</summary>
    III,
}

/// <summary>
/// A single sampling plan for normal inspection: draw <paramref name="SampleSize"/>, accept with at most <paramref name="Accept"/>
/// nonconforming.
/// </summary>
/// <param name="Letter">Code letter of the plan that applies, which an arrow of the table may have moved.</param>
/// <param name="SampleSize">n; never more than the lot.</param>
/// <param name="Accept">Ac, most nonconforming items with which the lot is accepted.</param>
/// <param name="IsWholeLot">True when the plan asks for as many items as the lot has or more: inspect them all.</param>
/// <remarks>
/// For incoming parts; capsules are inspected one by one. Source: ISO 2859-1:1999, tables 1 and 2-A, as in MIL-STD-105E, which shares
/// them; the table of letters and the arrows from memory. The table of plans is not copied: down a column the acceptance numbers run 0,
/// arrow up, arrow down, 1, 2, 3, 5, 7, 10, 14, 21, each column one row above its neighbour. Checks: published values F13,
/// <c>SamplingTableTests</c>.
/// </remarks>
public sealed record SamplingPlan(char Letter, int SampleSize, int Accept, bool IsWholeLot)
{
    private const string Letters = "ABCDEFGHJKLMNPQR";
    private static readonly int[] SampleSizes = [2, 3, 5, 8, 13, 20, 32, 50, 80, 125, 200, 315, 500, 800, 1250, 2000];
    private static readonly double[] QualityLimits =
    [
        0.010,
        0.015,
        0.025,
        0.040,
        0.065,
        0.10,
        0.15,
        0.25,
        0.40,
        0.65,
        1.0,
        1.5,
        2.5,
        4.0,
        6.5,
        10,
    ];
    private static readonly int[] AcceptNumbers = [1, 2, 3, 5, 7, 10, 14, 21];

    private static readonly int[] LargestLots =
    [
        8,
        15,
        25,
        50,
        90,
        150,
        280,
        500,
        1200,
        3200,
        10_000,
        35_000,
        150_000,
        500_000,
        int.MaxValue,
    ];

    private static readonly Dictionary<InspectionLevel, string> LettersByLevel = new()
    {
        [InspectionLevel.S1] = "AAAABBBBCCCCDDD",
        [InspectionLevel.S2] = "AAABBBCCCDDDEEE",
        [InspectionLevel.S3] = "AABBCCDDEEFFGGH",
        [InspectionLevel.S4] = "AABCCDEEFGGHJJK",
        [InspectionLevel.I] = "AABCCDEFGHJKLMN",
        [InspectionLevel.II] = "ABCDEFGHJKLMNPQ",
        [InspectionLevel.III] = "BCDEFGHJKLMNPQR",
    };

    /// <summary>Re, fewest nonconforming items with which the lot is rejected.</summary>
    public int Reject => Accept + 1;

    /// <summary>Acceptance quality limits of the table, % nonconforming, 0.010 to 10.</summary>
    public static IReadOnlyList<double> Limits => QualityLimits;

    /// <summary>Code letter for a lot.</summary>
    /// <param name="lotSize">Number of items in the lot; 2 or more.</param>
    /// <param name="level">Inspection level.</param>
    /// <exception cref="ArgumentOutOfRangeException">A lot of fewer than two, or a level that does not exist.</exception>
    public static char CodeLetter(int lotSize, InspectionLevel level = InspectionLevel.II)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(lotSize, 2);
        if (!LettersByLevel.TryGetValue(level, out var letters))
            throw new ArgumentOutOfRangeException(nameof(level), level, "is no inspection level");
        return letters[Array.FindIndex(LargestLots, largest => lotSize <= largest)];
    }

    /// <summary>Sample size of a code letter.</summary>
    /// <param name="letter">A to R, without I and O.</param>
    /// <exception cref="ArgumentOutOfRangeException">No code letter.</exception>
    public static int SampleSizeOf(char letter) => SampleSizes[Row(letter)];

    /// <summary>The plan for a lot.</summary>
    /// <param name="lotSize">Number of items in the lot; 2 or more.</param>
    /// <param name="qualityLimitPct">Acceptance quality limit, % nonconforming, one of <see cref="Limits"/>.</param>
    /// <param name="level">Inspection level.</param>
    /// <exception cref="ArgumentOutOfRangeException">A lot of fewer than two, or a limit that is not in the table.</exception>
    public static SamplingPlan ForLot(int lotSize, double qualityLimitPct, InspectionLevel level = InspectionLevel.II)
    {
        var plan = ForLetter(CodeLetter(lotSize, level), qualityLimitPct);
        return plan.SampleSize < lotSize ? plan : plan with { SampleSize = lotSize, IsWholeLot = true };
    }

    /// <summary>The plan for a code letter, arrows followed.</summary>
    /// <param name="letter">A to R, without I and O.</param>
    /// <param name="qualityLimitPct">Acceptance quality limit, % nonconforming, one of <see cref="Limits"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">No code letter, or a limit that is not in the table.</exception>
    public static SamplingPlan ForLetter(char letter, double qualityLimitPct)
    {
        var column = Array.IndexOf(QualityLimits, qualityLimitPct);
        if (column < 0)
            throw new ArgumentOutOfRangeException(nameof(qualityLimitPct), qualityLimitPct, "is no acceptance quality limit of the table");
        // Row in which this column has its plan with Ac = 0; limit 10 % would have it above the table, so its first rows point down.
        var zeroRow = 14 - column;
        var row = Row(letter);
        row = (row - zeroRow) switch
        {
            < 0 => zeroRow,
            1 when zeroRow < 0 => zeroRow + 3,
            1 => zeroRow,
            2 when zeroRow + 3 >= SampleSizes.Length => zeroRow,
            2 => zeroRow + 3,
            > 10 => zeroRow + 10,
            _ => row,
        };
        var accept = row == zeroRow ? 0 : AcceptNumbers[row - zeroRow - 3];
        return new(Letters[row], SampleSizes[row], accept, false);
    }

    private static int Row(char letter) =>
        Letters.IndexOf(letter, StringComparison.Ordinal) is >= 0 and var row
            ? row
            : throw new ArgumentOutOfRangeException(nameof(letter), letter, "is no code letter");
}
