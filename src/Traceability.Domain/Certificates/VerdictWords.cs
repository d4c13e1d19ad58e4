namespace Traceability.Domain.Certificates;

/// <summary>The words in which a certificate states verdicts, for <see cref="MeasuredValue.Verdict"/>.</summary>
public static class VerdictWords
{
    /// <summary>Inside its limits.</summary>
    public const string Within = "within";

    /// <summary>Outside its limits and accepted by a concession that the certificate states.</summary>
    public const string Conceded = "outside, conceded";

    /// <summary>
    /// Inside its limits, not shown to conform with its uncertainty, and accepted by a concession that the certificate states.
    /// </summary>
    public const string ConditionalConceded = "within, conditional, conceded";

    /// <summary>Outside its limits.</summary>
    public const string Outside = "outside";

    /// <summary>The route sets no limit.</summary>
    public const string ForInformation = "for information";
}
