using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;

namespace Traceability.Domain.Work.BenchWork;

/// <summary>Somebody signs in a second time to do a stage that somebody else should do.</summary>
public static class SecondSignIns
{
    /// <summary>The longest reason, in characters.</summary>
    public const int LongestReason = 500;

    /// <summary>The stages that this person needs a second sign-in for now, each with the stages of their own that it looks at.</summary>
    public static IReadOnlyList<(Stage Stage, IReadOnlyList<string> Own)> Needed(Dossier dossier, Actor actor) =>
        actor.SingleHanded is null
            ? []
            :
            [
                .. dossier
                    .Route.Stages.Select(s => (Stage: s, Own: TwoPeople.OwnStages(dossier, s, actor)))
                    .Where(n =>
                        n.Own.Count > 0
                        && dossier.CountingPass(n.Stage.Code) is null
                        && SecondPerson.ForStage(dossier, n.Stage.Code, actor) is null
                    ),
            ];

    /// <summary>Leads to the fact that opens the gate's rule for this person and this stage, for one attempt.</summary>
    public static Decision<SecondSignIn> Sign(Dossier dossier, string stage, Actor actor, Stamp stamp)
    {
        if (dossier.Route.Find(stage) is not { } found)
        {
            return Refusal.Invalid(
                "stage",
                RefusalTexts.SayWhichStageIsSignedFor(string.Join(", ", dossier.Route.Stages.Select(s => s.Code)))
            );
        }

        var own = TwoPeople.OwnStages(dossier, found, actor).Count > 0;
        if (!own || SecondPerson.ForStage(dossier, stage, actor) is not null)
        {
            return Refusal.Conflict(RefusalTexts.NoSecondSignInIsNeeded(actor.Name, found.Title), RefusalCode.AlreadyDone);
        }

        var need = SecondPerson.Of(actor, own);
        if (AloneRefusals.Of(need, () => RefusalTexts.AnotherDoesTheStage(actor.Name, found.Title)) is { } refusal)
        {
            return refusal;
        }

        var signed = SecondPerson.SignedBy(actor, SecondPerson.OfStage, dossier.Part.Id, dossier.Part.Id, stage, stamp);
        return Decision.Accept(signed, signed);
    }
}
