namespace Traceability.Domain.Routes.Files;

/// <summary>Something wrong in a route file, with the line (from 1) where it stands.</summary>
public sealed record RouteProblem(long Line, string Message)
{
    /// <inheritdoc/>
    public override string ToString() => RouteTexts.AtLine(Line, Message);
}

/// <summary>A route file read: either the route, or everything that is wrong with it.</summary>
public sealed record RouteReading(Route? Route, IReadOnlyList<RouteProblem> Problems)
{
    /// <summary>The kinds of lots, parts and instruments that the file names, which only a workshop can know.</summary>
    public IReadOnlyList<NamedKind> Named { get; init; } = [];
}
