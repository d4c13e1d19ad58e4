namespace Traceability.Domain.Gates.Rules;

/// <summary>
/// Nothing that counts was measured with an instrument in doubt, on the part or on anything inside it at whatever depth, unless it was
/// decided on. Asked before a part is fitted (inside another it cannot be measured again), before a certificate and at the door.
/// </summary>
public static class InstrumentInDoubt
{
    /// <summary>The rule's name in answers.</summary>
    public const string Rule = "instrument-in-doubt";

    private const int MostNamed = 5;

    /// <summary>Names what is in doubt in the part.</summary>
    public static GateCheck Check(GateQuestion q) => Check(q.Dossier.Around.InDoubt);

    /// <summary>Names what is in doubt in the parts about to be fitted; says nothing when there are none.</summary>
    public static GateCheck? CheckInputs(GateQuestion q)
    {
        var parts = (q.Context.Inputs?.Values ?? []).OfType<PartInput>().Where(p => !p.AlreadyFittedHere).ToList();
        return parts.Count == 0 ? null : Check([.. parts.SelectMany(p => p.InDoubt)]);
    }

    private static GateCheck Check(IReadOnlyList<InDoubt> doubts)
    {
        if (doubts.Count == 0)
        {
            return new(Rule, true, NothingMeasuredIsInDoubt);
        }

        var named = string.Join("; ", doubts.Take(MostNamed).Select(d => d.Because));
        return new(
            Rule,
            false,
            MeasuredInDoubt(doubts.Count > MostNamed ? AndMoreInDoubt(named, doubts.Count - MostNamed) : named),
            QualityLeadDecidesOnTheDoubt(doubts[0].Instrument)
        );
    }

    private static string NothingMeasuredIsInDoubt => GateTexts.Words.Say();

    private static string MeasuredInDoubt(string named) => GateTexts.Words.Say([named]);

    private static string AndMoreInDoubt(string named, int more) => GateTexts.Words.Say([named, more]);

    private static string QualityLeadDecidesOnTheDoubt(string instrument) => GateTexts.Words.Say([instrument]);
}
