using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages;
using Traceability.Domain.Stages.Methods;
using Traceability.Domain.Values.Limits;

namespace Traceability.Domain.Work.BenchWork;

/// <summary>What closing an attempt leads to.</summary>
public sealed record Closing(
    Verdict Verdict,
    IReadOnlyList<ReadingView> Readings,
    IReadOnlyList<string> Findings,
    Nonconformity? Nonconformity,
    AttemptEnding Ending
);

/// <summary>Closes an attempt: the stage's method computes and judges; a fail raises a nonconformity.</summary>
public static partial class Attempts
{
    /// <summary>Leads to the computed readings, the ending, and a nonconformity or an emptied carrier where that follows.</summary>
    public static Decision<Closing> Close(
        Dossier dossier,
        Guid attemptId,
        IReadOnlyList<EvidenceFile> evidence,
        string? note,
        GateContext context,
        Stamp stamp
    )
    {
        if (!WhileOpen.Find(dossier, attemptId, out var open, out var stage, out var refusal))
        {
            return refusal;
        }

        if (Missing(open, stage) is { } missing)
        {
            return missing;
        }

        var gate = Gatekeeper.EvaluateEnd(dossier, stage, context);
        if (!gate.Open)
        {
            return Refusal.GateClosed(gate);
        }

        if (stamp.OccurredAt < open.Attempt.OccurredAt)
        {
            return Refusal.Conflict(RefusalTexts.CannotEndBeforeItBegan(stamp.OccurredAt, open.Attempt.OccurredAt), RefusalCode.OutOfOrder);
        }

        var method = StageMethods.Get(stage.Method);
        var outcome = method.Judge(StageInputs.Of(dossier, open, stage, evidence, context, stamp.OccurredAt));
        return outcome.Unreadable is { } unreadable
            ? Refusal.Conflict(RefusalTexts.NothingWasJudged(unreadable), RefusalCode.NotComputable)
            : Conclude(dossier, open, stage, method, outcome, note, stamp);
    }

    private static Decision<Closing> Conclude(
        Dossier dossier,
        AttemptView open,
        Stage stage,
        StageMethod method,
        StageOutcome outcome,
        string? note,
        Stamp stamp
    )
    {
        List<Reading> computed = [.. outcome.Computed.Select(v => Computed(open, stage, method, v, stamp))];
        List<ReadingView> all = [.. open.Readings, .. computed.Select(r => new ReadingView(r, []))];
        var failedByFinding = outcome.Findings.Any(f => f.Fails);
        var verdict = AttemptView.VerdictOf(failedByFinding, all);
        string[] findings = [.. all.Where(r => !r.Met).Select(r => WhyUnmet(r, stage)), .. outcome.Findings.Select(f => f.Text)];
        var ending = new AttemptEnding(
            stamp.NewId(),
            dossier.Part.Id,
            open.Id,
            verdict,
            note,
            method.Name,
            method.Version,
            findings,
            failedByFinding,
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        )
        {
            CountsFrom = outcome.CountsFrom,
        };
        var nonconformity =
            verdict == Verdict.Pass
                ? null
                : new Nonconformity(
                    stamp.NewId(),
                    dossier.Part.Id,
                    open.Id,
                    stage.Code,
                    verdict == Verdict.Fail ? NonconformityCodes.StageFailed : NonconformityCodes.StageConditional,
                    verdict == Verdict.Fail
                        ? RefusalTexts.StageFailed(stage.Title, string.Join("; ", findings))
                        : RefusalTexts.StageIsConditional(stage.Title, string.Join("; ", findings)),
                    stamp.By,
                    stamp.OccurredAt,
                    stamp.RecordedAt
                );
        List<Fact> facts = [.. computed, ending];
        if (nonconformity is not null)
        {
            facts.Add(nonconformity);
        }
        else if (stage.FreesCarrier && dossier.Around.CarrierCode is { } carrier)
        {
            facts.Add(new CarrierRelease(stamp.NewId(), dossier.Part.Id, carrier, stamp.By, stamp.OccurredAt, stamp.RecordedAt));
        }

        return Decision.Accept(new Closing(verdict, all, findings, nonconformity, ending), facts);
    }

    private static string WhyUnmet(ReadingView r, Stage stage)
    {
        var value = $"{r.Reading.Characteristic} {r.Digits} {r.Reading.Unit}";
        var limits = stage.Characteristic(r.Reading.Characteristic)?.LimitsInWords();
        return r.Conformity == Conformity.NotMet
            ? RefusalTexts.IsOutside(value, limits)
            : RefusalTexts.IsInsideButNotShownToConform(
                value,
                limits,
                r.Reading.ExpandedUncertainty,
                r.Reading.Unit,
                100 * r.ProbabilityOfConformance
            );
    }

    private static Refusal? Missing(AttemptView open, Stage stage)
    {
        var readings = stage
            .Characteristics.Where(c => c is { Entered: true, Required: true } && open.Reading(c.Name) is null)
            .Select(c => c.Name);
        var files = stage
            .Evidence.Where(e => e.Required && open.Evidence.All(x => x.Name != e.Name))
            .Select(e => RefusalTexts.FileOfKind(e.Name, e.Kind));
        var missing = readings.Concat(files).ToList();
        return missing.Count == 0
            ? null
            : Refusal.Conflict(RefusalTexts.StillNeeds(stage.Title, string.Join(", ", missing)), RefusalCode.StageIncomplete);
    }

    private static Reading Computed(AttemptView open, Stage stage, StageMethod method, ComputedValue value, Stamp stamp)
    {
        var c =
            stage.Characteristic(value.Characteristic)
            ?? throw new InvalidOperationException(
                $"method {method.Name} computed '{value.Characteristic}', which stage '{stage.Code}' does not have"
            );
        return new(
            stamp.NewId(),
            open.Attempt.PartId,
            open.Id,
            c.Name,
            value.Value,
            value.Digits,
            c.Unit,
            c.Nominal,
            c.Lower,
            c.Upper,
            c.IsMetBy(value.Value),
            ReadingSource.Computed,
            method.Name,
            method.Version,
            value.EvidenceId,
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        )
        {
            ExpandedUncertainty = c.ExpandedUncertainty,
            Guarded = c.Guarded ? true : null,
        };
    }
}
