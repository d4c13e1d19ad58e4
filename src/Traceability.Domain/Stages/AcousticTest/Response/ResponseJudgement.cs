namespace Traceability.Domain.Stages.AcousticTest.Response;

/// <summary>What a response says against a mask.</summary>
public enum MaskVerdict
{
    /// <summary>Inside the mask wherever the mask asks for something.</summary>
    Inside,

    /// <summary>Outside the mask somewhere.</summary>
    Outside,

    /// <summary>The curve does not cover what the mask asks for, or the point of normalisation; no verdict.</summary>
    NotShown,
}

/// <summary>A response judged against a mask.</summary>
/// <param name="Verdict">The verdict.</param>
/// <param name="WorstMarginDb">Smallest distance to the mask, dB; negative outside it. Null when nothing could be compared.</param>
/// <param name="WorstAtHz">Where that is, Hz.</param>
/// <param name="FirstOutsideHz">Lowest frequency at which the response is outside, Hz; null when it is not.</param>
/// <param name="Words">The verdict in one sentence.</param>
public sealed record ResponseJudgement(MaskVerdict Verdict, double? WorstMarginDb, double? WorstAtHz, double? FirstOutsideHz, string Words);
