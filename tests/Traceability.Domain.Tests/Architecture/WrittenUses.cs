using System.Text.RegularExpressions;

namespace Traceability.Domain.Tests.Architecture;

/// <summary>
/// What source files name of other rooms: by <c>using</c> (plain, static or alias) and by a name that begins with a room
/// (<c>Work.Timing</c>), in code and in references of comments. These are also seen where the compiler leaves no trace, as of a constant.
/// </summary>
internal static partial class WrittenUses
{
    /// <summary>Every use between two namespaces below the root; names are looked up among these types.</summary>
    public static IEnumerable<Use> Of(IEnumerable<(string Path, string Text)> sources, string root, IEnumerable<Type> types)
    {
        var named = types
            .Where(t => t.DeclaringType is null && t.Namespace?.StartsWith(root + ".", StringComparison.Ordinal) is true)
            .Select(t => (Namespace: t.Namespace![(root.Length + 1)..], Name: t.Name.Split('`')[0]))
            .ToHashSet();
        return from file in sources
            let own = Namespace().Match(file.Text).Groups["name"].Value
            where own.StartsWith(root + ".", StringComparison.Ordinal)
            let inside = own[(root.Length + 1)..]
            from use in ByUsing(file.Text, root, named).Concat(ByQualifiedName(file.Text, root, inside, named))
            where use.Namespace != inside
            select new Use(Path.GetFileName(file.Path), inside, use.Name, use.Namespace);
    }

    private static IEnumerable<(string Namespace, string Name)> ByUsing(
        string text,
        string root,
        IReadOnlySet<(string Namespace, string Name)> named
    ) =>
        Using()
            .Matches(text)
            .Select(m => m.Groups["name"].Value)
            .Where(name => name.StartsWith(root + ".", StringComparison.Ordinal))
            .Select(name => name[(root.Length + 1)..])
            .Select(name =>
                named.FirstOrDefault(t => name == $"{t.Namespace}.{t.Name}") is { Name: not null } type ? type : (name, "using " + name)
            );

    // "Work.Timing" inside Traceability.Domain.Gates, and "Files.RouteText" inside Traceability.Domain.Routes.
    private static IEnumerable<(string Namespace, string Name)> ByQualifiedName(
        string text,
        string root,
        string inside,
        HashSet<(string Namespace, string Name)> named
    ) =>
        from m in Qualified().Matches(text)
        let chain = m.Value.StartsWith(root + ".", StringComparison.Ordinal) ? m.Value[(root.Length + 1)..] : m.Value
        let parts = chain.Split('.')
        from parent in Parents(inside)
        from length in Enumerable.Range(1, parts.Length - 1)
        let type = (parent + string.Join('.', parts[..length]), parts[length])
        where named.Contains(type)
        select type;

    private static IEnumerable<string> Parents(string from)
    {
        var parts = from.Split('.');
        return Enumerable.Range(0, parts.Length + 1).Select(n => string.Concat(parts[..n].Select(p => p + ".")));
    }

    [GeneratedRegex(@"^namespace (?<name>[\w.]+)", RegexOptions.Multiline)]
    private static partial Regex Namespace();

    [GeneratedRegex(@"^\s*(global )?using (static )?(\w+ = )?(?<name>[\w.]+)", RegexOptions.Multiline)]
    private static partial Regex Using();

    [GeneratedRegex(@"(?<![\w.])[A-Z]\w*(\.[A-Z]\w*)+")]
    private static partial Regex Qualified();
}
