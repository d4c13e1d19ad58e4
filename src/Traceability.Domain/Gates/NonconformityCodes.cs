namespace Traceability.Domain.Gates;

/// <summary>Codes of nonconformities that the service raises by itself.</summary>
public static class NonconformityCodes
{
    /// <summary>A stage was closed with the verdict fail.</summary>
    public const string StageFailed = "stage-failed";

    /// <summary>A stage was closed with the verdict conditional: inside the limits, but not shown to conform.</summary>
    public const string StageConditional = "stage-conditional";

    /// <summary>A corrected reading turned a pass into a fail.</summary>
    public const string CorrectionTurnedVerdict = "correction-turned-verdict";

    /// <summary>
    /// Judged anew after a correction, a stage would fail by something other than a reading; no later correction answers it by itself.
    /// </summary>
    public const string FindingAfterCorrection = "finding-after-correction";

    /// <summary>Those about readings alone: once the readings, as corrected, are all met, nothing is left to decide.</summary>
    public static readonly IReadOnlyList<string> OfReadings = [StageFailed, StageConditional, CorrectionTurnedVerdict];
}
