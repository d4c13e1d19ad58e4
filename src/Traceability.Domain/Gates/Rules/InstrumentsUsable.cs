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
            return new(Rule, false, NoInstrumentOfKind(string.Join(", ", missing)), ScanA(missing[0]));
        }

        return named.Select(i => Problem(q, i)).FirstOrDefault(p => p is not null)
            ?? new GateCheck(Rule, true, InCalibration(string.Join(", ", named.Select(i => i.Instrument.Code))));
    }

    private static GateCheck? Problem(GateQuestion q, InstrumentStanding i)
    {
        var code = i.Instrument.Code;
        if (i.Retired is { } retired)
        {
            return new(Rule, false, IsRetired(code, retired.Reason), UseAnotherOrHaveItTakenIntoUse);
        }

        if (i.OpenHolds.Count > 0)
        {
            return new(Rule, false, GateTexts.IsOnHold(code, i.OpenHolds[0].Reason), UseAnotherOrTheQualityLeadLifts);
        }

        if (i.InForce(q.Context.Day) is null)
        {
            return i.LatestCalibration(q.Context.Day) switch
            {
                null => new(Rule, false, WasNeverCalibrated(code), UseAnotherOrRecordItsCalibration),
                { Passed: false } bad => new(
                    Rule,
                    false,
                    WasFoundOutOfToleranceOn(code, WorkshopCalendar.Say(bad.CalibratedOn)),
                    UseAnotherOrHaveItRepaired
                ),
                var due => new(Rule, false, CalibrationRanOutOn(code, WorkshopCalendar.Say(due.DueOn)), UseAnotherOrRecordItsCalibration),
            };
        }

        return !q.Stage.CheckedToday || i.Instrument.CheckNominal is null
            ? null
            : CheckProblem(code, i.CheckOn(q.Context.Day, q.Context.Calendar), q.Context.Day);
    }

    private static GateCheck? CheckProblem(string code, InstrumentCheck? check, DateOnly day) =>
        check switch
        {
            null => new(Rule, false, WasNotCheckedAgainstItsReferenceOn(code, WorkshopCalendar.Say(day)), CheckItAgainstItsReference),
            { Passed: false } => new(Rule, false, FailedItsCheckOn(code, WorkshopCalendar.Say(day)), UseAnotherOrFindOutWhy),
            _ => null,
        };

    private static string NoInstrumentOfKind(string missing) => GateTexts.Words.Say([missing]);

    private static string ScanA(string missing) => GateTexts.Words.Say([missing]);

    private static string InCalibration(string codes) => GateTexts.Words.Say([codes]);

    private static string IsRetired(string code, string reason) => GateTexts.Words.Say([code, reason]);

    private static string UseAnotherOrHaveItTakenIntoUse => GateTexts.Words.Say();

    private static string UseAnotherOrTheQualityLeadLifts => GateTexts.Words.Say();

    private static string WasNeverCalibrated(string code) => GateTexts.Words.Say([code]);

    private static string UseAnotherOrRecordItsCalibration => GateTexts.Words.Say();

    private static string WasFoundOutOfToleranceOn(string code, string calibratedOn) => GateTexts.Words.Say([code, calibratedOn]);

    private static string UseAnotherOrHaveItRepaired => GateTexts.Words.Say();

    private static string CalibrationRanOutOn(string code, string dueOn) => GateTexts.Words.Say([code, dueOn]);

    private static string WasNotCheckedAgainstItsReferenceOn(string code, string day) => GateTexts.Words.Say([code, day]);

    private static string CheckItAgainstItsReference => GateTexts.Words.Say();

    private static string FailedItsCheckOn(string code, string day) => GateTexts.Words.Say([code, day]);

    private static string UseAnotherOrFindOutWhy => GateTexts.Words.Say();
}
