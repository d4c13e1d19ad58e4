namespace Traceability.Domain.Routes.Comparison;

/// <summary>How two revisions differ in something.</summary>
public enum Difference
{
    /// <summary>They do not.</summary>
    Same,

    /// <summary>Both say it, differently.</summary>
    Changed,

    /// <summary>Only the right one says it.</summary>
    Added,

    /// <summary>Only the left one says it.</summary>
    Removed,
}

/// <summary>One thing that at least one of two revisions says; null on the side that does not.</summary>
public sealed record ComparedLine(RouteAspect Aspect, string Item, string Field, string? Left, string? Right)
{
    /// <summary>How they differ in it.</summary>
    public Difference Difference =>
        Left == Right ? Difference.Same
        : Left is null ? Difference.Added
        : Right is null ? Difference.Removed
        : Difference.Changed;
}

/// <summary>
/// One stage of two revisions. Null on a side where it is missing. <c>LeftAfter</c> and <c>RightAfter</c> name the stage before it among
/// those that both have; it was moved when they are not the same.
/// </summary>
public sealed record ComparedStage(
    string Code,
    Stage? Left,
    Stage? Right,
    string? LeftAfter,
    string? RightAfter,
    IReadOnlyList<ComparedLine> Lines
)
{
    /// <summary>True when both have it and it follows another stage than before.</summary>
    public bool Moved => Left is not null && Right is not null && LeftAfter != RightAfter;

    /// <summary>The lines in which they differ.</summary>
    public IEnumerable<ComparedLine> Differences => Lines.Where(l => l.Difference != Difference.Same);

    /// <summary>Added, removed, changed in at least one line, or the same; a stage that was only moved is the same stage.</summary>
    public Difference Difference =>
        Left is null ? Difference.Added
        : Right is null ? Difference.Removed
        : Differences.Any() ? Difference.Changed
        : Difference.Same;

    /// <summary>True when there is something to see.</summary>
    public bool Differs => Moved || Difference != Difference.Same;
}

/// <summary>
/// Two revisions side by side: everything that a route file can state, stage by stage. A stage is the same stage when its code is. Turning
/// the sides round turns added into removed and changes nothing else; a revision compared with itself has no difference. Checked by
/// <c>RouteComparisonTests</c>.
/// </summary>
/// <param name="Head">The lines of the route itself.</param>
/// <param name="Stages">Every stage of either, in the order of the right one; a stage that only the left one has stands after the one it
/// followed there.</param>
public sealed record RouteComparison(IReadOnlyList<ComparedLine> Head, IReadOnlyList<ComparedStage> Stages)
{
    /// <summary>True when the two say different things.</summary>
    public bool Differs => Head.Any(l => l.Difference != Difference.Same) || Stages.Any(s => s.Differs);

    /// <summary>Compares two revisions; they should be of one model and kind to make sense.</summary>
    public static RouteComparison Of(Route left, Route right)
    {
        var codes = right.Stages.Select(s => s.Code).ToList();
        foreach (var (code, i) in left.Stages.Select((s, i) => (s.Code, i)).Where(s => right.Find(s.Code) is null))
        {
            codes.Insert(i == 0 ? 0 : codes.IndexOf(left.Stages[i - 1].Code) + 1, code);
        }

        var (leftAfter, rightAfter) = (Befores(left, right), Befores(right, left));
        return new(
            Compare(RouteLines.Of(left), RouteLines.Of(right)),
            [.. codes.Select(c => Compare(c, left.Find(c), right.Find(c), leftAfter.GetValueOrDefault(c), rightAfter.GetValueOrDefault(c)))]
        );
    }

    private static ComparedStage Compare(string code, Stage? left, Stage? right, string? leftAfter, string? rightAfter) =>
        new(
            code,
            left,
            right,
            leftAfter,
            rightAfter,
            [
                .. Compare(left is null ? [] : RouteLines.Of(left), right is null ? [] : RouteLines.Of(right)),
                .. left is null || right is null ? [] : Orders(left, right),
            ]
        );

    /// <summary>For every stage that both have, the one before it that both have; null for the first.</summary>
    private static Dictionary<string, string?> Befores(Route route, Route other)
    {
        var common = route.Stages.Select(s => s.Code).Where(c => other.Find(c) is not null).ToList();
        return common.Select((code, i) => (code, Before: i == 0 ? null : common[i - 1])).ToDictionary(c => c.code, c => c.Before);
    }

    private static List<ComparedLine> Compare(IEnumerable<RouteLine> left, IEnumerable<RouteLine> right)
    {
        var (was, becomes) = (ByName(left), ByName(right));
        return
        [
            .. becomes
                .Select(b => new ComparedLine(b.Key.Aspect, b.Key.Item, b.Key.Field, was.GetValueOrDefault(b.Key), b.Value))
                .Concat(
                    was.Where(w => !becomes.ContainsKey(w.Key))
                        .Select(w => new ComparedLine(w.Key.Aspect, w.Key.Item, w.Key.Field, w.Value, null))
                )
                .OrderBy(l => l.Aspect),
        ];
    }

    /// <summary>A file may say the same thing twice (two waits after one stage): the second is compared with the second.</summary>
    private static Dictionary<(RouteAspect Aspect, string Item, string Field, int Time), string> ByName(IEnumerable<RouteLine> lines) =>
        lines
            .GroupBy(l => (l.Aspect, l.Item, l.Field))
            .SelectMany(g => g.Select((l, i) => (Key: (l.Aspect, l.Item, l.Field, i), l.Value)))
            .ToDictionary(l => l.Key, l => l.Value);

    /// <summary>Where both list the same things in another order, the order of those is a line of its own.</summary>
    private static IEnumerable<ComparedLine> Orders(Stage left, Stage right) =>
        from pair in RouteLines.ListsOf(left).Zip(RouteLines.ListsOf(right))
        let was = string.Join(", ", pair.First.Items.Where(pair.Second.Items.Contains))
        let becomes = string.Join(", ", pair.Second.Items.Where(pair.First.Items.Contains))
        where was != becomes
        select new ComparedLine(pair.First.Aspect, "", pair.First.Field, was, becomes);
}
