using System.Text.Json;
using System.Text.RegularExpressions;

namespace Traceability.Domain.Tests.Sources;

/// <summary>Where an expected value is from. What kind it is decides in which folder the case stands.</summary>
public enum SourceKind
{
    /// <summary>A table or worked example of a standard, handbook, paper or manual: document, table or page.</summary>
    Printed,

    /// <summary>Computed by somebody else's program: library and version.</summary>
    Library,

    /// <summary>A definition or closed form that is worked out at the test itself.</summary>
    Definition,
}

/// <summary>The source of one case.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Where">Who, which document and table, or which library and version; ends with "from memory" where nobody looked.</param>
public sealed partial record Source(SourceKind Kind, string Where)
{
    private const int ShortestName = 6;

    /// <summary>The source that a row of a data file names; a row without one, or with an unknown kind, is refused.</summary>
    public static Source Of(JsonElement row)
    {
        var said = row.GetProperty("source");
        return new(Enum.Parse<SourceKind>(said.GetProperty("kind").GetString()!, ignoreCase: true), said.GetProperty("where").GetString()!);
    }

    /// <summary>What is wrong with it in this folder, or null.</summary>
    public string? ProblemIn(string folder) =>
        !Enum.IsDefined(Kind) ? $"no kind {Kind}"
        : Where.Trim().Length < ShortestName ? $"'{Where}' names no source"
        : Kind == SourceKind.Library && !LibraryWithVersion().IsMatch(Where) ? $"'{Where}' names no library with its version"
        : Kind == SourceKind.Printed && folder == Folders.Library ? $"'{Where}' is printed and belongs to {Folders.Printed}"
        : Kind == SourceKind.Library && folder == Folders.Printed ? $"'{Where}' is a library and belongs to {Folders.Library}"
        : null;

    [GeneratedRegex(@"^(R|SciPy|mpmath|Python|Node\.js) (\d+\.\d+|\(version not noted\))", RegexOptions.CultureInvariant)]
    private static partial Regex LibraryWithVersion();
}

/// <summary>The two folders of cases from outside.</summary>
public static class Folders
{
    public const string Printed = "AgainstPublishedValues";

    public const string Library = "AgainstAnotherLibrary";
}
