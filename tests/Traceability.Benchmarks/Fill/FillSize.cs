namespace Traceability.Benchmarks;

/// <summary>How much is filled in: at a million units the readings are cut to one an attempt and the ledger to one entry a part, as an import would write it.</summary>
internal sealed record FillSize(int Units)
{
    private const int Thin = 300_000;

    /// <summary>Readings of each attempt.</summary>
    public int ReadingsPerAttempt => Units >= Thin ? 1 : 4;

    /// <summary>Whether every command has its entry in the ledger, or the whole life of a part one.</summary>
    public bool EntryPerCommand => Units < Thin;

    /// <summary>What was left out, in words; empty when nothing was.</summary>
    public string Note => Units >= Thin ? " (scaled down at this size: one reading an attempt, one ledger entry a part)" : "";
}
