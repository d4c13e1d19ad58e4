namespace Traceability.Domain.Routes;

/// <summary>
/// The terminals of a capsule between which an electrical test can put a voltage; a closed list, so that no route is misread at the bench.
/// </summary>
public static class TestTerminals
{
    /// <summary>What a gap lies between: the film of a side and the backplate before it.</summary>
    public static IReadOnlyList<(string Film, string Backplate)> Gaps { get; } =
    [("film", "backplate"), ("front-film", "front-backplate"), ("rear-film", "rear-backplate")];

    /// <summary>Every word that a route may use.</summary>
    public static IReadOnlyList<string> All { get; } = [.. Gaps.SelectMany(g => new[] { g.Film, g.Backplate }), "body"];

    /// <summary>
    /// True when the voltage may stand across a gap: a film or a backplate is connected and the other one of its gap is not tied to it. One
    /// that is left open takes whatever voltage leaks to it, so it counts as not tied.
    /// </summary>
    public static bool CrossesAGap(this TestConnection connection) =>
        Gaps.Any(g => Apart(connection.Tied, g) || Apart(connection.Against, g));

    private static bool Apart(IReadOnlyList<string> pole, (string Film, string Backplate) gap) =>
        pole.Contains(gap.Film) != pole.Contains(gap.Backplate);
}
