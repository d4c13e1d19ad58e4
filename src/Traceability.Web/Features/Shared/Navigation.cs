using Traceability.Domain.Gates;
using Traceability.Domain.Records;

namespace Traceability.Web.Features.Shared;

/// <summary>A line of the navigation: the key of its text, where it leads, and whose it is (nobody named = everybody).</summary>
public sealed record NavigationEntry(string Key, string Url, params IReadOnlyList<Role> Roles);

/// <summary>What stands in the head of every page, by role, and where a person begins.</summary>
public static class Navigation
{
    private static readonly NavigationEntry[] All =
    [
        new("Nav.Station", "/station", Role.Builder),
        new("Nav.Bench", "/bench", Role.Builder),
        new("Nav.NewPart", "/parts/new", Role.Builder),
        new("Nav.Quality", "/quality", Role.Quality),
        new("Nav.Parts", "/parts"),
        new("Nav.Lots", "/lots", Role.Quality, Role.Service, Role.Lead, Role.Importer),
        new("Nav.Nonconformities", "/nonconformities", Role.Quality),
        new("Nav.Holds", "/holds", Role.Quality),
        new("Nav.Trace", "/trace", Role.Quality, Role.Service),
        new("Nav.Returns", "/returns", Role.Service, Role.Quality),
        new("Nav.Instruments", "/instruments", Role.Builder, Role.Quality, Role.Lead),
        new("Nav.Labels", "/labels", Role.Builder, Role.Quality, Role.Lead),
        new("Nav.Setup", "/setup", Role.Lead),
        new("Nav.Routes", "/setup/routes", Role.Quality, Role.Lead),
    ];

    /// <summary>The lines for a person.</summary>
    public static IEnumerable<NavigationEntry> For(Actor actor) => All.Where(e => e.Roles.Count == 0 || e.Roles.Any(actor.Is));

    /// <summary>Where a person begins: the first line that is theirs.</summary>
    public static string HomeOf(Actor actor) => For(actor).FirstOrDefault()?.Url ?? "/";

    /// <summary>True when the page asked for is the line's, or lies below it.</summary>
    public static bool IsHere(NavigationEntry entry, PathString path) =>
        path.StartsWithSegments(entry.Url) && !All.Any(other => other.Url.Length > entry.Url.Length && path.StartsWithSegments(other.Url));
}
