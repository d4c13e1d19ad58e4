using Traceability.Domain.Values;

namespace Traceability.Domain.Gates;

/// <summary>
/// The words of the gates, in <c>GateTexts.resx</c>. What one rule alone says is a member of that rule, so that a rule is one file; here
/// stands what several of them say, and what is said about doubt.
/// </summary>
internal static class GateTexts
{
    /// <summary>The file, for the rules that take their own sentences from it.</summary>
    internal static readonly TextFile Words = new(typeof(GateTexts));

    internal static string NextIs(string stage) => Words.Say([stage]);

    internal static string FitAnother => Words.Say();
    internal static string JoinedByAnd => Words.Say();

    internal static string IsOnHold(string code, string reason) => Words.Say([code, reason]);

    internal static string WasMeasuredInDoubt(string serial, string stage, string instrument, string cause) =>
        Words.Say([serial, stage, instrument, cause]);

    internal static string CauseCalibration(string day) => Words.Say([day]);

    internal static string CauseCheck(string foundAt) => Words.Say([foundAt]);

    internal static string CauseHold(string foundAt) => Words.Say([foundAt]);
}
