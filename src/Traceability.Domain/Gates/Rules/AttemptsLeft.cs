using Traceability.Domain.Routes;

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

        var failed = Failed(q.Dossier, q.Stage);
        return failed < allowed
            ? new(Rule, true, AttemptsFailedSoFar(failed, allowed))
            : new(Rule, false, AllAttemptsFailed(allowed), QualityLeadDecidesConcessionRegradeOrScrap);
    }

    /// <summary>
    /// True when every attempt that the route allows at this stage was failed, so that no rework may lead through it again.
    /// </summary>
    public static bool NoneLeft(Dossier dossier, Stage stage) => Failed(dossier, stage) >= stage.AllowedAttempts;

    private static int Failed(Dossier dossier, Stage stage) => dossier.Attempts.Count(a => a.Stage == stage.Code && a.Closed && !a.Passed);

    private static string AttemptsFailedSoFar(int failed, int allowed) => GateTexts.Words.Say([failed, allowed]);

    private static string AllAttemptsFailed(int allowed) => GateTexts.Words.Say([allowed]);

    private static string QualityLeadDecidesConcessionRegradeOrScrap => GateTexts.Words.Say();
}
