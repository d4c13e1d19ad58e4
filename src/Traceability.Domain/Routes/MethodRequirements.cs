namespace Traceability.Domain.Routes;

/// <summary>What a stage's method asks of the route that names it; handed in by whoever reads a route for the first time.</summary>
/// <param name="Name">The name by which routes name the method.</param>
/// <param name="Numbers">Numbers that it reads from <c>parameters: numbers</c>, each above zero.</param>
/// <param name="SignedNumbers">Numbers that it reads and that may also be zero or below.</param>
/// <param name="Parameters">Other keys that it reads under <c>parameters</c>.</param>
/// <param name="ProblemsWith">What a stage of the route lacks for it, in words; empty when all is well.</param>
public sealed record MethodRequirements(
    string Name,
    IReadOnlyList<string> Numbers,
    IReadOnlyList<string> SignedNumbers,
    IReadOnlyList<string> Parameters,
    Func<Stage, IEnumerable<string>> ProblemsWith
);
