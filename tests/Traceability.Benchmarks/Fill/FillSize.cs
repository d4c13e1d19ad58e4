namespace Traceability.Benchmarks;

/// <summary>
/// How much is filled in. The ledger is most of the work: for large databases only every hundredth unit is told to it, and the chains of
/// the others are empty. At a million units the readings are cut to one an attempt.
/// </summary>
internal sealed record FillSize(int Units)
{
    private const int WholeLedgerBelow = 50_000;
    private const int WholeReadingsBelow = 300_000;
    private const int ToldOfEvery = 100;

    /// <summary>Readings of each attempt.</summary>
    public int ReadingsPerAttempt => Units < WholeReadingsBelow ? 4 : 1;

    /// <summary>Whether what is recorded on the parts of this unit, counted from 0, is told to the ledger.</summary>
    public bool IsTold(int unit) => Units < WholeLedgerBelow || unit % ToldOfEvery == 0;

    /// <summary>What was left out, in words; empty when nothing was.</summary>
    public string Note =>
        (Units < WholeLedgerBelow ? "" : $" (the ledger of every {ToldOfEvery}th unit only)")
        + (Units < WholeReadingsBelow ? "" : " (one reading an attempt)");
}
