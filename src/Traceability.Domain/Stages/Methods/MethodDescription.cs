using Traceability.Domain.Evidence;

namespace Traceability.Domain.Stages.Methods;

/// <summary>What a method tells those who write routes; its parameters are <see cref="StageMethod.Parameters"/>.</summary>
/// <param name="Text">What it judges and what it needs, in a few sentences.</param>
/// <param name="Reads">The entered characteristics of the stage that it looks at, the ones it cannot do without first.</param>
/// <param name="Needed">How many of them, counted from the first, a route must have.</param>
/// <param name="Computes">What it can compute.</param>
/// <param name="Evidence">The kinds of file that it reads.</param>
/// <param name="Sources">Where its formulas and rules come from.</param>
public sealed record MethodDescription(
    string Text,
    IReadOnlyList<string> Reads,
    int Needed,
    IReadOnlyList<MethodValue> Computes,
    IReadOnlyList<EvidenceKind> Evidence,
    IReadOnlyList<string> Sources
);
