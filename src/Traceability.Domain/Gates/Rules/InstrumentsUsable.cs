using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Gates.Rules;

/// <summary>One instrument of each kind is named, in use, in calibration, not held, and proved today where the route says so.</summary>
public static class InstrumentsUsable
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "instruments";

    /// <summary>Judges the instruments named; says nothing when none were asked for yet.</summary>
    public static GateCheck? Check(GateQuestion q)
    {
        if (q.Context.Instruments is not { } named || (q.Stage.InstrumentKinds.Count == 0 && named.Count == 0))
        {
            return null;
        }

        var missing = q.Stage.InstrumentKinds.Where(kind => named.All(i => i.Instrument.Kind != kind)).ToList();
        if (missing.Count > 0)
        {
            return new(Rule, false, GateTexts.NoInstrumentOfKind(string.Join(", ", missing)), GateTexts.ScanA(missing[0]));
        }

        return named.Select(i => Problem(q, i)).FirstOrDefault(p => p is not null)
            ?? new GateCheck(
                Rule,
                true,
                named.Count == 0
                    ? GateTexts.NoInstrumentNeeded
                    : GateTexts.InCalibration(string.Join(", ", named.Select(i => i.Instrument.Code)))
            );
    }

    private static GateCheck? Problem(GateQuestion q, InstrumentStanding i)
    {
        var code = i.Instrument.Code;
        if (i.Retired is { } retired)
        {
            return new(Rule, false, GateTexts.IsRetired(code, retired.Reason), GateTexts.UseAnotherOrHaveItTakenIntoUse);
        }

        if (i.OpenHolds.Count > 0)
        {
            return new(Rule, false, GateTexts.IsOnHold(code, i.OpenHolds[0].Reason), GateTexts.UseAnotherOrTheQualityLeadLifts);
        }

        if (i.InForce(q.Context.Day) is null)
        {
            return i.LatestCalibration(q.Context.Day) switch
            {
                null => new(Rule, false, GateTexts.WasNeverCalibrated(code), GateTexts.UseAnotherOrRecordItsCalibration),
                { Passed: false } bad => new(
                    Rule,
                    false,
                    GateTexts.WasFoundOutOfToleranceOn(code, WorkshopCalendar.Say(bad.CalibratedOn)),
                    GateTexts.UseAnotherOrHaveItRepaired
                ),
                var due => new(
                    Rule,
                    false,
                    GateTexts.CalibrationRanOutOn(code, WorkshopCalendar.Say(due.DueOn)),
                    GateTexts.UseAnotherOrRecordItsCalibration
                ),
            };
        }

        return !q.Stage.CheckedToday || i.Instrument.CheckNominal is null
            ? null
            : CheckProblem(code, i.CheckOn(q.Context.Day, q.Context.Calendar), q.Context.Day);
    }

    private static GateCheck? CheckProblem(string code, InstrumentCheck? check, DateOnly day) =>
        check switch
        {
            null => new(
                Rule,
                false,
                GateTexts.WasNotCheckedAgainstItsReferenceOn(code, WorkshopCalendar.Say(day)),
                GateTexts.CheckItAgainstItsReference
            ),
            { Passed: false } => new(
                Rule,
                false,
                GateTexts.FailedItsCheckOn(code, WorkshopCalendar.Say(day)),
                GateTexts.UseAnotherOrFindOutWhy
            ),
            _ => null,
        };
}
