using Traceability.Domain.Tests.Architecture.MadeUp.Quality;

namespace Traceability.Domain.Tests.Architecture.MadeUp.Records;

// Each uses the room above in another way, as a type of the domain might.
internal sealed class OfField
{
    internal Above? Kept { get; init; }
}

internal static class OfSignature
{
    internal static bool IsNothing(Above? above) => above is null;
}

internal static class OfCall
{
    internal static int Twice() => 2 * Above.Count;
}

internal static class OfLambda
{
    internal static IEnumerable<int> Of(IEnumerable<int> numbers) => numbers.Select(n => n + Above.Count);
}

internal static class OfTypeTest
{
    internal static bool Is(object thing) => thing is Above;
}

internal static class OfElement
{
    internal static object None() => new List<Above[]>();
}
