namespace Traceability.Domain.Routes.Drafts;

/// <summary>
/// What was typed under the keys of a route, a stage or something in it: as typed, right or wrong. Empty is the same as left out.
/// </summary>
public sealed class DraftMap
{
    private readonly Dictionary<string, string> texts = [];
    private readonly Dictionary<string, List<string>> lists = [];
    private readonly Dictionary<string, List<DraftMap>> items = [];
    private readonly Dictionary<string, DraftMap> groups = [];

    /// <summary>Whole lines of comment that stand before it in the file.</summary>
    public IReadOnlyList<string> Comments { get; set; } = [];

    /// <summary>True when nothing was typed.</summary>
    public bool IsEmpty =>
        texts.Count == 0
        && lists.Values.All(l => l.Count == 0)
        && items.Values.SelectMany(i => i).All(i => i.IsEmpty)
        && groups.Values.All(g => g.IsEmpty);

    /// <summary>The names under which a text or a number stands.</summary>
    public IEnumerable<string> Names => texts.Keys;

    /// <summary>The text under a key, "" when there is none; setting "" takes it away.</summary>
    public string this[string key]
    {
        get => texts.GetValueOrDefault(key, "");
        set
        {
            if (value.Length == 0)
            {
                texts.Remove(key);
            }
            else
            {
                texts[key] = value;
            }
        }
    }

    /// <summary>A flag, or what it is when nothing is said.</summary>
    public bool Is(DraftField flag) => texts.TryGetValue(flag.Key, out var said) ? said == "true" : flag.Otherwise;

    /// <summary>The list of texts under a key, which may be changed.</summary>
    public List<string> List(string key) => lists.TryGetValue(key, out var there) ? there : lists[key] = [];

    /// <summary>The list of things under a key, which may be changed.</summary>
    public List<DraftMap> Items(string key) => items.TryGetValue(key, out var there) ? there : items[key] = [];

    /// <summary>The thing under a key, which may be changed.</summary>
    public DraftMap Group(string key) => groups.TryGetValue(key, out var there) ? there : groups[key] = new();

    /// <summary>Gives another what this one holds.</summary>
    internal void CopyTo(DraftMap other)
    {
        foreach (var (key, text) in texts)
        {
            other.texts[key] = text;
        }

        foreach (var (key, list) in lists)
        {
            other.lists[key] = list;
        }

        foreach (var (key, list) in items)
        {
            other.items[key] = list;
        }

        foreach (var (key, group) in groups)
        {
            other.groups[key] = group;
        }
    }
}
