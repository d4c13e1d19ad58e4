namespace Traceability.Domain.Quality;

/// <summary>
/// The plain answer to a question that the data cannot carry: what is missing, how much of it is needed and how much there is.
/// A figure is never invented, and never a NaN, where this is the honest answer.
/// </summary>
/// <param name="What">The thing counted, in words that follow a number: "parts", "failed parts", "groups of two or more".</param>
/// <param name="Needed">The least number that the question needs.</param>
/// <param name="Found">The number that there is.</param>
public sealed record NotEnoughData(string What, int Needed, int Found)
{
    /// <summary>The sentence a page may print as it stands.</summary>
    public override string ToString() => FormattableString.Invariant($"not enough data: needs at least {Needed} {What}, has {Found}");
}
