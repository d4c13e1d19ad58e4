using System.Xml.Linq;

namespace Traceability.Domain.Tests.Architecture;

/// <summary>The project's own files, found from where the tests run.</summary>
internal static class TheRepository
{
    public static readonly DirectoryInfo Root = Find(new DirectoryInfo(AppContext.BaseDirectory));

    /// <summary>Every project that is delivered, by name.</summary>
    public static IReadOnlyDictionary<string, XDocument> Projects =>
        new[] { "src", "migrations", "seed-scenario" }
            .SelectMany(folder => new DirectoryInfo(At(folder)).GetFiles("*.csproj", SearchOption.AllDirectories))
            .ToDictionary(f => Path.GetFileNameWithoutExtension(f.Name), f => XDocument.Load(f.FullName));

    public static string At(params string[] parts) => Path.Combine([Root.FullName, .. parts]);

    public static IEnumerable<string> Included(this XDocument project, string item) =>
        project.Descendants(item).Select(e => e.Attribute("Include")!.Value);

    public static IEnumerable<string> ProjectsReferenced(this XDocument project) =>
        project.Included("ProjectReference").Select(p => Path.GetFileNameWithoutExtension(p.Replace('\\', '/')));

    /// <summary>Source files below a folder, without what the build makes.</summary>
    public static IEnumerable<(string Path, string Text)> Sources(params string[] folder) =>
        Directory
            .EnumerateFiles(At(folder), "*.cs*", SearchOption.AllDirectories)
            .Where(f =>
                Path.GetExtension(f) is ".cs" or ".cshtml" && !f.Split(Path.DirectorySeparatorChar).Any(part => part is "obj" or "bin")
            )
            .Select(f => (Path.GetRelativePath(Root.FullName, f), File.ReadAllText(f)));

    private static DirectoryInfo Find(DirectoryInfo? from) =>
        from switch
        {
            null => throw new DirectoryNotFoundException("no Traceability.sln above the tests"),
            _ when File.Exists(Path.Combine(from.FullName, "Traceability.sln")) => from,
            _ => Find(from.Parent),
        };
}
