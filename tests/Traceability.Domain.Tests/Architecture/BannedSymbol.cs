using System.Reflection;

namespace Traceability.Domain.Tests.Architecture;

/// <summary>
/// A line of the list of banned symbols, and whether there is such a thing: the analyzer passes over a misspelt one in silence.
/// </summary>
internal sealed record BannedSymbol(string Id)
{
    private const BindingFlags Anything = BindingFlags.Public | BindingFlags.Static | BindingFlags.Instance;

    private static readonly IReadOnlyList<string> Platform = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!)
        .Split(Path.PathSeparator)
        .Select(f => Path.GetFileNameWithoutExtension(f))
        .Where(n => n.StartsWith("System.", StringComparison.Ordinal))
        .ToList();

    /// <summary>The symbols of the core's list.</summary>
    public static IReadOnlyList<BannedSymbol> OfTheCore =>
        [
            .. File.ReadLines(TheRepository.At("src", "Traceability.Domain", "BannedSymbols.txt"))
                .Where(l => l.Length > 0)
                .Select(l => new BannedSymbol(l.Split(';')[0])),
        ];

    public bool Exists =>
        Id.Split(':', 2) switch
        {
            ["T", var type] => TypeOf(type) is not null,
            ["P", var property] => TypeOf(Owner(property))?.GetProperty(Last(property), Anything) is not null,
            ["M", var method] => Method(method),
            _ => false,
        };

    /// <summary>True when the type, or this member of it, is on the list.</summary>
    public static bool Covers(IEnumerable<BannedSymbol> symbols, string type, string? member = null) =>
        symbols.Any(s => s.Id == $"T:{type}" || (member is not null && s.Id.Split('(')[0][2..] == $"{type}.{member}"));

    private static bool Method(string signature)
    {
        var name = signature.Split('(')[0];
        var parameters = signature.Contains('(', StringComparison.Ordinal)
            ? signature[(name.Length + 1)..^1].Split(',').Select(TypeOf).ToArray()
            : [];
        return Array.TrueForAll(parameters, p => p is not null)
            && TypeOf(Owner(name))?.GetMethod(Last(name), Anything, parameters!) is not null;
    }

    private static string Owner(string member) => member[..member.LastIndexOf('.')];

    private static string Last(string member) => member[(member.LastIndexOf('.') + 1)..];

    private static Type? TypeOf(string name) =>
        Type.GetType(name) ?? Platform.Select(assembly => Type.GetType($"{name}, {assembly}")).FirstOrDefault(t => t is not null);

    public override string ToString() => Id;
}
