using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Values.Limits;

namespace Traceability.Domain.Work.BenchWork;

/// <summary>What a correction leads to, in its own attempt and in later ones of the part.</summary>
/// <param name="Correction">The correction.</param>
/// <param name="VerdictBefore">Verdict of its attempt before; null while that is open.</param>
/// <param name="VerdictAfter">Verdict of its attempt after.</param>
/// <param name="Nonconformity">Raised when that verdict turned.</param>
/// <param name="Later">Later attempts that came out otherwise.</param>
public sealed record Corrected(
    Correction Correction,
    Verdict? VerdictBefore,
    Verdict? VerdictAfter,
    Nonconformity? Nonconformity,
    IReadOnlyList<JudgedAnew> Later
)
{
    /// <summary>
    /// Carries the correction on to the parts around this one, from the inside out; null when nothing was closed on the reading yet.
    /// </summary>
    public JudgeAnew? Onwards { get; init; }
}

/// <summary>
/// Supersedes a reading; what was computed from it, then and later, is computed anew, and a turned verdict raises a nonconformity by
/// itself.
/// </summary>
public static partial class Readings
{
    /// <summary>
    /// A builder who may do the stage may correct before the next one was started; the quality lead always, except where the route asks for
    /// two people and the lead was the first. The context says who corrects.
    /// </summary>
    public static Decision<Corrected> Correct(
        Dossier dossier,
        Guid readingId,
        EnteredDecimal number,
        string reason,
        GateContext context,
        Func<AttemptView, JudgedOn> on,
        Stamp stamp
    )
    {
        var attempt = dossier.Attempts.FirstOrDefault(a => a.Readings.Any(r => r.Reading.Id == readingId));
        if (attempt is null)
        {
            return Refusal.NotFound(RefusalTexts.HasNoReading(dossier.Part.Serial, readingId));
        }

        var reading = attempt.Readings.First(r => r.Reading.Id == readingId);
        if (Problem(dossier, attempt, reading, number, reason, context) is { } problem)
        {
            return problem;
        }

        var correction = Supersede(reading, number.Value, number.Digits, reason, stamp);
        if (!attempt.Closed)
        {
            return Decision.Accept(new Corrected(correction, null, null, null, []), correction);
        }

        var anew = new JudgeAnew(
            RefusalTexts.WasCorrectedFromTo(
                reading.Reading.Characteristic,
                dossier.Part.Serial,
                reading.Digits,
                number.Digits,
                reading.Reading.Unit
            ),
            on,
            stamp
        );
        var own = anew.Own(dossier.With([correction]), attempt, correction);
        if (own.Refusal is { } refusal)
        {
            return refusal;
        }

        var later = anew.Reached(dossier.With([correction, .. own.Facts]));
        return later.Refusal is { } unreachable
            ? unreachable
            : Decision.Accept(
                new Corrected(correction, attempt.Verdict, own.Value!.After, own.Value.Nonconformity, later.Value!) { Onwards = anew },
                [correction, .. own.Facts, .. later.Facts]
            );
    }

    private static Refusal? Problem(
        Dossier dossier,
        AttemptView attempt,
        ReadingView reading,
        EnteredDecimal number,
        string reason,
        GateContext context
    )
    {
        if (number.IsGreaterThan && reading.Reading.Upper is not null)
        {
            return Refusal.Invalid("value", RefusalTexts.BoundShowsNothingOfUpperLimit(number.Digits, reading.Reading.Characteristic));
        }

        if (string.IsNullOrWhiteSpace(reason))
        {
            return Refusal.Invalid("reason", RefusalTexts.SayWhyTheReadingWasWrong);
        }

        if (reading.Reading.Source == ReadingSource.Computed)
        {
            return Refusal.Conflict(RefusalTexts.IsComputedCorrectItsReading(reading.Reading.Characteristic));
        }

        if (attempt.Ending is { Abandoned: true })
        {
            return Refusal.Conflict(RefusalTexts.AbandonedReadingsDoNotCount);
        }

        var wentOn =
            dossier.Attempts.Any(a => a.Attempt.RecordedAt > attempt.Attempt.RecordedAt && a.Id != attempt.Id)
            || dossier.Around.FittedInSerial is not null
            || dossier.Shipped is not null;
        return context.Actor!.Is(Role.Quality) || (context.Actor.Is(Role.Builder) && !wentOn)
            ? MayNotWork(dossier, attempt, context)
            : Refusal.Forbidden(RefusalTexts.OnlyTheQualityLeadMayCorrectNow(dossier.Part.Serial));
    }

    private static Refusal? MayNotWork(Dossier dossier, AttemptView attempt, GateContext context)
    {
        var gate =
            dossier.Route.Find(attempt.Stage) is not { } stage ? null
            : context.Actor!.Is(Role.Quality) ? Gatekeeper.EvaluateJudge(dossier, stage, context)
            : Gatekeeper.EvaluatePerson(dossier, stage, context);
        return gate is { Open: false } ? Refusal.GateClosed(gate) : null;
    }

    /// <summary>A correction of a reading, judged by the limits that judged it.</summary>
    internal static Correction Supersede(ReadingView old, decimal value, string digits, string reason, Stamp stamp) =>
        new(
            stamp.NewId(),
            old.Reading.PartId,
            old.Reading.Id,
            value,
            digits,
            old.Acceptance.Judge(value) == Conformity.Met,
            reason,
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
}
