using Traceability.Domain.Routes;

namespace Traceability.Domain.Gates.Rules;

/// <summary>
/// Says whether a stage may start or end on a part, with every rule's reason and remedy. Pure: the same dossier, stage and
/// context always give the same answer. A closed gate is a normal answer, never an exception.
/// </summary>
public static class Gatekeeper
{
    private static readonly IReadOnlyDictionary<string, Input> NothingFitted = new Dictionary<string, Input>();

    private static readonly Func<GateQuestion, GateCheck?>[] StartRules =
    [
        PartUsable.Check,
        EarlierStagesPassed.Check,
        NotPassedYet.Check,
        OneAttemptAtATime.Check,
        NoOpenNonconformity.Check,
        NoHoldInside.Check,
        LotsInsideReleased.Check,
        WaitElapsed.Check,
        WindowOpen.Check,
        AttemptsLeft.Check,
        BuilderQualified.Check,
        TwoPeople.Check,
        InstrumentsUsable.Check,
        TestVoltagePermitted.Check,
    ];

    private static readonly Func<GateQuestion, GateCheck?>[] EndRules =
    [
        PartUsable.Check,
        EarlierStagesPassed.Check,
        NoOpenNonconformity.Check,
        NoHoldInside.Check,
        LotsInsideReleased.Check,
        BuilderQualified.Check,
        TwoPeople.Check,
        MinimumTimeOpen.Check,
        InputsFit.Check,
        InputsMatch.Check,
    ];

    /// <summary>May this stage start? What goes into its slots is asked when it is fitted and when the stage ends.</summary>
    public static GateVerdict Evaluate(Dossier dossier, Stage stage, GateContext context) => Judge(dossier, stage, context, StartRules);

    /// <summary>May the attempt now open on this stage end? A context without inputs means that its slots are empty.</summary>
    public static GateVerdict EvaluateEnd(Dossier dossier, Stage stage, GateContext context) =>
        Judge(dossier, stage, context with { Inputs = context.Inputs ?? NothingFitted }, EndRules);

    /// <summary>May these things be fitted at this stage? Only what is named is judged, not what is still missing.</summary>
    public static GateVerdict EvaluateInputs(Dossier dossier, Stage stage, GateContext context) =>
        Judge(
            dossier,
            stage,
            context,
            [PartUsable.Check, NoOpenNonconformity.Check, InputsFit.CheckNamedOnly, InstrumentInDoubt.CheckInputs]
        );

    /// <summary>
    /// May this person work on the stage at all: measure, fit, attach, correct? Asked at every write, for a stage is often opened by
    /// one and worked on by another. A machine that sends under its own name is no person.
    /// </summary>
    public static GateVerdict EvaluatePerson(Dossier dossier, Stage stage, GateContext context) =>
        Judge(
            dossier,
            stage,
            context.Actor is { IsMachine: true } ? context with { Actor = null } : context,
            [BuilderQualified.Check, TwoPeople.Check]
        );

    /// <summary>
    /// May this person decide on what was recorded in the stage? The quality lead may without being qualified for the work, but not on the
    /// own work.
    /// </summary>
    public static GateVerdict EvaluateJudge(Dossier dossier, Stage stage, GateContext context) =>
        Judge(dossier, stage, context, [TwoPeople.Check]);

    /// <summary>Every stage of the part's route, as of the context's moment.</summary>
    public static IReadOnlyList<GateVerdict> EvaluateAll(Dossier dossier, GateContext context) =>
        [.. dossier.Route.Stages.Select(s => Evaluate(dossier, s, context))];

    private static GateVerdict Judge(Dossier dossier, Stage stage, GateContext context, IEnumerable<Func<GateQuestion, GateCheck?>> rules)
    {
        var question = new GateQuestion(dossier, stage, context);
        var checks = rules.Select(rule => rule(question)).OfType<GateCheck>().ToList();
        return new(stage.Code, stage.Title, StateOf(question, checks), checks);
    }

    private static StageState StateOf(GateQuestion q, List<GateCheck> checks)
    {
        var unmet = checks.Where(c => !c.Met).ToList();
        return q.Dossier.IsPassed(q.Stage.Code) ? StageState.Passed
            : q.Dossier.OpenAttempt?.Stage == q.Stage.Code || unmet.Count == 0 ? StageState.Open
            : unmet.Exists(c => c.Rule == EarlierStagesPassed.Rule) ? StageState.Later
            : unmet.TrueForAll(c => c.Rule == WaitElapsed.Rule) ? StageState.Waiting
            : StageState.Blocked;
    }
}
