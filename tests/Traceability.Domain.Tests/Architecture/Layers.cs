namespace Traceability.Domain.Tests.Architecture;

/// <summary>
/// The rooms of the domain from below and what each may use: a room is the part of a namespace that follows <c>Traceability.Domain</c>.
/// Whoever needs an edge that is not here moves the type to where it belongs or hands its value in as an argument.
/// </summary>
internal static class Layers
{
    private static readonly string[] Basis = ["Codes", "Values", "Ledger", "Evidence"];

    /// <summary>Rooms above the basis, from below; each may use the basis and all rooms before it.</summary>
    private static readonly string[] Above = ["Records", "Routes", "Stages", "Gates", "Work", "Quality", "Certificates"];

    /// <summary>
    /// Values and the ledger stand on nothing, codes and the files of evidence on values alone; none of the last three knows another.
    /// Scanning is a conversation about codes and numbers, and knows nothing of parts and routes.
    /// </summary>
    public static readonly IReadOnlyDictionary<string, IReadOnlySet<string>> Allowed = new Dictionary<string, IReadOnlySet<string>>
    {
        ["Values"] = Set(),
        ["Codes"] = Set("Values"),
        ["Ledger"] = Set(),
        ["Evidence"] = Set("Values"),
        ["Scanning"] = Set("Codes", "Values"),
    }
        .Concat(Above.Select((room, i) => KeyValuePair.Create(room, Set([.. Basis, .. Above[..i]]))))
        .ToDictionary();

    /// <summary>The uses that go from one room to another without being allowed, in words.</summary>
    public static IReadOnlyList<string> Forbidden(IEnumerable<Use> uses) =>
        [
            .. uses.Where(u => u.FromRoom != u.ToRoom && !(Allowed.TryGetValue(u.FromRoom, out var below) && below.Contains(u.ToRoom)))
                .Select(u => u.ToString())
                .Distinct()
                .Order(StringComparer.Ordinal),
        ];

    private static IReadOnlySet<string> Set(params string[] rooms) => rooms.ToHashSet();
}
