using Traceability.Domain.Routes;

namespace Traceability.Domain.Gates.Rules;

/// <summary>Two people where the route says so: who builds does not release (common practice, no source), unless the workshop
/// works single-handed and the person signed in a second time.</summary>
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

        var own = OwnStages(q.Dossier, q.Stage, actor);
        if (own.Count == 0)
        {
            return new(Rule, true, DidNotDo(actor.Name, string.Join(", ", q.Stage.NotByBuilderOf.Select(q.TitleOf))));
        }

        var titles = string.Join(", ", own.Select(q.TitleOf));
        var signed = SecondPerson.ForStage(q.Dossier, q.Stage.Code, actor);
        return SecondPerson.Of(actor.Alone(signed?.Reason), didTheWork: true) switch
        {
            SecondPersonNeed.Alone => new(Rule, true, SignedInASecondTime(actor.Name, titles, signed!.Reason)),
            SecondPersonNeed.Reason => new(Rule, false, DidThemselves(actor.Name, titles), SignInASecondTime),
            _ => new(Rule, false, DidThemselves(actor.Name, titles), AnotherPersonDoesThisStage),
        };
    }

    /// <summary>The stages that the route names and that this person had a hand in.</summary>
    public static IReadOnlyList<string> OwnStages(Dossier dossier, Stage stage, Actor actor) =>
        [.. stage.NotByBuilderOf.Where(s => TookPartIn(dossier.CountingPass(s), actor.PersonId))];

    private static bool TookPartIn(AttemptView? pass, Guid person) =>
        pass is not null && (pass.WorkedOnBy(person) || pass.CorrectedBy(person));

    private static string DidNotDo(string person, string stages) => GateTexts.Words.Say([person, stages]);

    private static string DidThemselves(string person, string stages) => GateTexts.Words.Say([person, stages]);

    private static string AnotherPersonDoesThisStage => GateTexts.Words.Say();

    private static string SignedInASecondTime(string person, string stages, string reason) => GateTexts.Words.Say([person, stages, reason]);

    private static string SignInASecondTime => GateTexts.Words.Say();
}
