namespace Traceability.Domain.Gates.Rules;

/// <summary>Every earlier stage of the route is passed and its pass still counts.</summary>
public static class EarlierStagesPassed
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "earlier-stages";

    /// <summary>Names the earlier stages that are missing.</summary>
    public static GateCheck Check(GateQuestion q)
    {
        var missing = q.Dossier.Route.Stages.TakeWhile(s => s.Code != q.Stage.Code).Where(s => !q.Dossier.IsPassed(s.Code)).ToList();
        return missing.Count == 0
            ? new(Rule, true, EveryEarlierStageIsPassed)
            : new(Rule, false, NotPassedYet(string.Join(", ", missing.Select(s => s.Title))), GateTexts.NextIs(missing[0].Title));
    }

    private static string EveryEarlierStageIsPassed => GateTexts.Words.Say();

    private static string NotPassedYet(string titles) => GateTexts.Words.Say([titles]);
}
