namespace Traceability.Domain.Gates.Rules;

/// <summary>A stage may be failed only so often (two cleanings at most is common practice for the insulation test, no source).</summary>
public static class AttemptsLeft
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "attempts-left";

    /// <summary>Counts the failed attempts.</summary>
    public static GateCheck? Check(GateQuestion q)
    {
        if (q.Stage.AllowedAttempts is not { } allowed)
        {
            return null;
        }

        var failed = q.Dossier.Attempts.Count(a => a.Stage == q.Stage.Code && a.Closed && !a.Passed);
        return failed < allowed
            ? new(Rule, true, $"{failed} of {allowed} attempts failed so far")
            : new(Rule, false, $"all {allowed} attempts failed", "the quality lead decides: concession, regrade or scrap");
    }
}
