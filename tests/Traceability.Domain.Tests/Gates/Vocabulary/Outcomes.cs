using Traceability.Domain.Gates;
using Traceability.Domain.Work;
using Xunit.Sdk;

namespace Traceability.Domain.Tests.Gates.Vocabulary;

/// <summary>What came of a command, as a test states it.</summary>
internal static class Outcomes
{
    public static T Accepted<T>(this Decision<T> decision) =>
        decision.Refusal is { } refusal ? throw new XunitException($"refused: {refusal.Message}") : decision.Value!;

    /// <summary>Refused in this way, in words that hold all of these, and leading to no fact.</summary>
    public static Refusal IsRefused<T>(this Decision<T> decision, RefusalKind kind, params string[] words)
    {
        var refusal = decision.Refusal ?? throw new XunitException("was accepted");
        Assert.Equal(kind, refusal.Kind);
        Assert.All(words, word => Assert.Contains(word, refusal.Message, StringComparison.Ordinal));
        Assert.Empty(decision.Facts);
        return refusal;
    }

    public static void IsMet(this GateCheck check) =>
        Assert.True(check.Met && check.Because.Length > 0, $"{check.Rule} is not met: {check.Because}");

    /// <summary>Not met, for a reason that holds all of these words, and with something to do about it.</summary>
    public static void IsNotMet(this GateCheck check, params string[] words)
    {
        Assert.False(check.Met, $"{check.Rule} is met: {check.Because}");
        Assert.False(string.IsNullOrWhiteSpace(check.Remedy), $"{check.Rule} names no remedy");
        Assert.All(words, word => Assert.Contains(word, check.Because, StringComparison.Ordinal));
    }
}
