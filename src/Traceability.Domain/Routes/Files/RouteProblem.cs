namespace Traceability.Domain.Routes.Files;

/// <summary>Something wrong in a route file, with the line (from 1) where it stands.</summary>
public sealed record RouteProblem(long Line, string Message)
{
    /// <summary>
    /// Where it stands: keys with a point between, and the place in a list from 0, e.g. <c>stages[3].characteristics[0].lower</c>; "" for
    /// the file as a whole.
    /// </summary>
    public string Path { get; init; } = "";

    /// <inheritdoc/>
    public override string ToString() => RouteTexts.AtLine(Line, Message);
}

/// <summary>A route file read: either the route, or everything that is wrong with it.</summary>
public sealed record RouteReading(Route? Route, IReadOnlyList<RouteProblem> Problems)
{
    /// <summary>The kinds of lots, parts and instruments that the file names, which only a workshop can know.</summary>
    public IReadOnlyList<NamedKind> Named { get; init; } = [];
}
