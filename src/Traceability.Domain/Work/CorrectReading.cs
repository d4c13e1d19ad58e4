using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Decisions;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages;
using Traceability.Domain.Values;

namespace Traceability.Domain.Work;

/// <summary>What a correction leads to.</summary>
public sealed record Corrected(Correction Correction, Verdict? VerdictBefore, Verdict? VerdictAfter, Nonconformity? Nonconformity);

/// <summary>Supersedes a reading; what was computed from it is computed anew, and a turned verdict raises a nonconformity by itself.</summary>
public static class CorrectReading
{
    /// <summary>A builder may correct before the next stage was started; the quality lead always.</summary>
    public static Decision<Corrected> Decide(Dossier dossier, Guid readingId, EnteredDecimal number, string reason, Actor actor, IReadOnlyList<EvidenceFile> evidence, GateContext context, Stamp stamp)
    {
        var attempt = dossier.Attempts.FirstOrDefault(a => a.Readings.Any(r => r.Reading.Id == readingId));
        if (attempt is null)
        {
            return Refusal.NotFound($"{dossier.Part.Serial} has no reading {readingId}");
        }

        var reading = attempt.Readings.First(r => r.Reading.Id == readingId);
        if (Problem(dossier, attempt, reading, number, reason, actor) is { } problem)
        {
            return problem;
        }

        var stage = dossier.Route.Find(attempt.Stage)!;
        var correction = Correct(reading, number.Value, number.Digits, reason, stamp);
        var facts = new List<Fact> { correction };
        if (attempt.Closed)
        {
            var outcome = JudgedAnew(dossier.With(facts), attempt.Id, stage, evidence, context);
            if (outcome.Unreadable is { } unreadable)
            {
                return Refusal.Conflict($"{unreadable} Nothing was corrected.");
            }

            facts.AddRange(outcome.Computed.Select(v => Recomputed(attempt, v, stamp)).OfType<Correction>());
        }

        var after = dossier.With(facts).Attempts.First(a => a.Id == attempt.Id);
        var nonconformity = attempt.Closed && attempt.Passed && !after.Passed
            ? new Nonconformity(
                stamp.NewId(), dossier.Part.Id, attempt.Id, attempt.Stage, NonconformityCodes.CorrectionTurnedVerdict,
                $"{stage.Title}: {reading.Reading.Characteristic} corrected from {reading.Digits} to {number.Digits} {reading.Reading.Unit} turned a pass into a {Words.Of(after.Verdict!.Value)}",
                stamp.By, stamp.OccurredAt, stamp.RecordedAt)
            : null;
        if (nonconformity is not null)
        {
            facts.Add(nonconformity);
        }

        return Decision.Accept(new Corrected(correction, attempt.Verdict, after.Verdict, nonconformity), facts);
    }

    private static Refusal? Problem(Dossier dossier, AttemptView attempt, ReadingView reading, EnteredDecimal number, string reason, Actor actor)
    {
        if (number.IsGreaterThan && reading.Reading.Upper is not null)
        {
            return Refusal.Invalid("value", $"'{number.Digits}' shows nothing about {reading.Reading.Characteristic}, which has an upper limit");
        }

        if (string.IsNullOrWhiteSpace(reason))
        {
            return Refusal.Invalid("reason", "say why the reading was wrong");
        }

        if (reading.Reading.Source == ReadingSource.Computed)
        {
            return Refusal.Conflict($"{reading.Reading.Characteristic} is computed; correct the reading that it is computed from");
        }

        if (attempt.Ending is { Abandoned: true })
        {
            return Refusal.Conflict("the attempt was abandoned; its readings do not count");
        }

        var wentOn = dossier.Attempts.Any(a => a.Attempt.RecordedAt > attempt.Attempt.RecordedAt && a.Id != attempt.Id) || dossier.Around.FittedInSerial is not null || dossier.Shipped is not null;
        return actor.Is(Role.Quality) || (actor.Is(Role.Builder) && !wentOn) ? null
            : Refusal.Forbidden($"{dossier.Part.Serial} has gone on since; only the quality lead may correct this reading now");
    }

    private static StageOutcome JudgedAnew(Dossier dossier, Guid attemptId, Stage stage, IReadOnlyList<EvidenceFile> evidence, GateContext context)
    {
        var attempt = dossier.Attempts.First(a => a.Id == attemptId);
        var then = dossier.CorrectedAsOf(attempt.Ending!.RecordedAt);
        return StageMethods.Get(stage.Method).Judge(StageInputs.Of(then, attempt, stage, evidence, context, attempt.Ending.OccurredAt));
    }

    private static Correction? Recomputed(AttemptView attempt, ComputedValue value, Stamp stamp) =>
        attempt.Reading(value.Characteristic) is { } old && old.Value != value.Value
            ? Correct(old, value.Value, value.Digits, "computed anew from the corrected reading", stamp)
            : null;

    private static Correction Correct(ReadingView old, decimal value, string digits, string reason, Stamp stamp) => new(
        stamp.NewId(), old.Reading.PartId, old.Reading.Id, value, digits, old.Acceptance.Judge(value) == Conformity.Met, reason, stamp.By, stamp.OccurredAt, stamp.RecordedAt);
}
