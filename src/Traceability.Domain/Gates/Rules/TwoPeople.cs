namespace Traceability.Domain.Gates.Rules;

/// <summary>Two people where the route says so: who builds does not release (common practice, no source).</summary>
public static class TwoPeople
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "two-people";

    /// <summary>
    /// Refuses whoever worked on the stages that the route names; asked at the start, at the end and at every write between.
    /// </summary>
    public static GateCheck? Check(GateQuestion q)
    {
        if (q.Stage.NotByBuilderOf.Count == 0 || q.Context.Actor is not { } actor)
        {
            return null;
        }

        var own = q.Stage.NotByBuilderOf.Where(s => TookPartIn(q.Dossier.CountingPass(s), actor.PersonId)).ToList();
        return own.Count == 0
            ? new(Rule, true, DidNotDo(actor.Name, string.Join(", ", q.Stage.NotByBuilderOf.Select(q.TitleOf))))
            : new(Rule, false, DidThemselves(actor.Name, string.Join(", ", own.Select(q.TitleOf))), AnotherPersonDoesThisStage);
    }

    private static bool TookPartIn(AttemptView? pass, Guid person) =>
        pass is not null && (pass.WorkedOnBy(person) || pass.CorrectedBy(person));

    private static string DidNotDo(string person, string stages) => GateTexts.Words.Say([person, stages]);

    private static string DidThemselves(string person, string stages) => GateTexts.Words.Say([person, stages]);

    private static string AnotherPersonDoesThisStage => GateTexts.Words.Say();
}
