using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.Methods;

/// <summary>
/// What every method says alike: of its route, and of readings that say nothing. Their words are in <c>StageTexts.resx</c>.
/// </summary>
internal static class StageTexts
{
    private static readonly TextFile Words = new(typeof(StageTexts));

    internal static string MethodComputesNothing(string name) => Words.Say([name]);

    internal static string MethodComputes(string name) => Words.Say([name]);

    internal static string MethodReadsTheNumber(string name) => Words.Say([name]);

    internal static string MethodDoesNotCompute(string name) => Words.Say([name]);

    internal static string CheckThemAndTheirUnits => Words.Say();

    internal static string NothingCanBeSaidOf(string missing, string because) => Words.Say([missing, because]);

    internal static string MethodReads(string name) => Words.Say([name]);
}
