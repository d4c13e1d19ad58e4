using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Gates.Rules;

/// <summary>One instrument of each kind is named, in calibration, not held, and proved today where the route says so.</summary>
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
            return new(Rule, false, $"no instrument of kind {string.Join(", ", missing)} was named", $"scan a {missing[0]}");
        }

        return named.Select(i => Problem(q, i)).FirstOrDefault(p => p is not null)
            ?? new GateCheck(Rule, true, named.Count == 0 ? "no instrument needed" : $"{string.Join(", ", named.Select(i => i.Instrument.Code))}: in calibration");
    }

    private static GateCheck? Problem(GateQuestion q, InstrumentStanding i)
    {
        var code = i.Instrument.Code;
        if (i.OpenHolds.Count > 0)
        {
            return new(Rule, false, $"{code} is on hold: {i.OpenHolds[0].Reason}", "use another, or the quality lead lifts the hold");
        }

        if (i.InForce(q.Context.Day) is null)
        {
            return i.LatestCalibration(q.Context.Day) switch
            {
                null => new(Rule, false, $"{code} was never calibrated", "use another, or record its calibration"),
                { Passed: false } bad => new(Rule, false, $"{code} was found out of tolerance on {WorkshopCalendar.Say(bad.CalibratedOn)}", "use another, or have it repaired and calibrated"),
                var due => new(Rule, false, $"{code}'s calibration ran out on {WorkshopCalendar.Say(due.DueOn)}", "use another, or record its calibration"),
            };
        }

        return !q.Stage.CheckedToday || i.Instrument.CheckNominal is null ? null : CheckProblem(code, i.CheckOn(q.Context.Day, q.Context.Calendar), q.Context.Day);
    }

    private static GateCheck? CheckProblem(string code, InstrumentCheck? check, DateOnly day) => check switch
    {
        null => new(Rule, false, $"{code} was not checked against its reference on {WorkshopCalendar.Say(day)}", "check it against its reference and record the check"),
        { Passed: false } => new(Rule, false, $"{code} failed its check on {WorkshopCalendar.Say(day)}", "use another, or find out why and check it again"),
        _ => null,
    };
}
