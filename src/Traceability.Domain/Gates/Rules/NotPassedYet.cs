namespace Traceability.Domain.Gates.Rules;

/// <summary>A stage is not done twice; only a rework or a removal opens it again.</summary>
public static class NotPassedYet
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "not-passed-yet";

    /// <summary>Refuses a stage whose pass counts.</summary>
    public static GateCheck Check(GateQuestion q) =>
        q.Dossier.CountingPass(q.Stage.Code) is not { } pass ? new(Rule, true, IsNotPassedYet)
        : q.Stage.Repeatable && !WentOn(q, pass) ? new(Rule, true, PassedAndMayBeRunAgain)
        : new(
            Rule,
            false,
            WasPassedOn(q.Stage.Title, q.Context.Calendar.Say(pass.Ending!.OccurredAt)),
            q.Dossier.NextStage() is { } next ? GateTexts.NextIs(next.Title) : PartIsFinished
        );

    private static bool WentOn(GateQuestion q, AttemptView pass) =>
        q.Dossier.Attempts.Any(a =>
            a.Attempt.RecordedAt > pass.Ending!.RecordedAt && a.Stage != q.Stage.Code && q.Dossier.Route.IsAtOrAfter(a.Stage, q.Stage.Code)
        );

    private static string IsNotPassedYet => GateTexts.Words.Say();

    private static string PassedAndMayBeRunAgain => GateTexts.Words.Say();

    private static string WasPassedOn(string stage, string occurredAt) => GateTexts.Words.Say([stage, occurredAt]);

    private static string PartIsFinished => GateTexts.Words.Say();
}
