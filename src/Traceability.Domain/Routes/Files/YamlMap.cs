using System.Globalization;
using System.Text.RegularExpressions;
using YamlDotNet.RepresentationModel;

namespace Traceability.Domain.Routes.Files;

/// <summary>
/// A YAML mapping read strictly: every key must be asked for, every value must be of the kind asked for, and what is wrong is
/// noted with its line instead of thrown, so that a person sees all problems of a file at once.
/// </summary>
internal sealed class YamlMap
{
    private readonly Dictionary<string, YamlNode> values = [];
    private readonly HashSet<string> asked = [];
    private readonly List<RouteProblem> problems;
    private readonly string what;
    private readonly string path;

    public YamlMap(YamlNode node, string what, List<RouteProblem> problems, string path = "")
    {
        this.problems = problems;
        this.what = what;
        this.path = path;
        Line = node.Start.Line;
        if (node is not YamlMappingNode mapping)
        {
            Note(Line, path, RouteTexts.MustBeListOfPairs(what));
            return;
        }

        foreach (var (key, value) in mapping.Children)
        {
            if (key is YamlScalarNode { Value: { } name })
            {
                values[name] = value;
            }
            else
            {
                Note(key.Start.Line, path, RouteTexts.HasAKeyThatIsNoText(what));
            }
        }
    }

    public long Line { get; }

    public string Text(string key) => values.ContainsKey(key) ? OptionalText(key) ?? "" : Missing(key, "");

    public string? OptionalText(string key) =>
        Take(key) switch
        {
            null => null,
            YamlScalarNode { Value: { Length: > 0 } text } => text,
            var node => Wrong<string?>(node, key, RouteTexts.AText),
        };

    public int? OptionalWhole(string key, int atLeast = 0) =>
        OptionalNumber(key) switch
        {
            null => null,
            { } n when n != decimal.Truncate(n) || n is < int.MinValue or > int.MaxValue => Wrong<int?>(
                values[key],
                key,
                RouteTexts.AWholeNumber
            ),
            { } n when n < atLeast => Wrong<int?>(values[key], key, RouteTexts.NumberOfAtLeast(atLeast)),
            { } n => (int)n,
        };

    /// <summary>A whole number that must be there, zero or more.</summary>
    public int Whole(string key) => values.ContainsKey(key) ? OptionalWhole(key) ?? 0 : Missing(key, 0);

    public decimal? OptionalNumber(string key) =>
        Take(key) switch
        {
            null => null,
            YamlScalarNode s when decimal.TryParse(s.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var n) => n,
            var node => Wrong<decimal?>(node, key, RouteTexts.ANumber),
        };

    public decimal Number(string key) => values.ContainsKey(key) ? OptionalNumber(key) ?? 0m : Missing(key, 0m);

    public bool Flag(string key, bool otherwise) =>
        Take(key) switch
        {
            null => otherwise,
            YamlScalarNode { Value: "true" } => true,
            YamlScalarNode { Value: "false" } => false,
            var node => Wrong(node, key, RouteTexts.TrueOrFalse, otherwise),
        };

    public DateOnly Date(string key) =>
        Take(key) switch
        {
            YamlScalarNode s when DateOnly.TryParseExact(s.Value, "yyyy-MM-dd", out var date) => date,
            null => Missing(key, default(DateOnly)),
            var node => Wrong(node, key, RouteTexts.ADate, default(DateOnly)),
        };

    public IReadOnlyList<string> Texts(string key) =>
        [.. Nodes(key).Select(n => n is YamlScalarNode { Value: { } text } ? text : Wrong(n, key, RouteTexts.AListOfTexts, ""))];

    public IReadOnlyList<YamlMap> Maps(string key, string ofWhat) =>
        [.. Nodes(key).Select((n, i) => new YamlMap(n, ofWhat, problems, $"{At(key)}[{i}]"))];

    public YamlMap? OptionalMap(string key) => Take(key) is { } node ? new YamlMap(node, key, problems, At(key)) : null;

    public IReadOnlyDictionary<string, decimal> Numbers() => values.Keys.ToDictionary(key => key, Number);

    public bool Has(string key) => values.ContainsKey(key);

    /// <summary>The list under a key, of which no two may have the same name.</summary>
    public IReadOnlyList<T> Distinct<T>(
        string key,
        string ofWhat,
        Func<YamlMap, T> read,
        Func<T, string> nameOf,
        Func<string, string> twice
    )
    {
        var items = new List<T>();
        foreach (var map in Maps(key, ofWhat))
        {
            var item = read(map);
            if (nameOf(item) != "" && items.Exists(i => nameOf(i) == nameOf(item)))
            {
                map.Problem(twice(nameOf(item)));
            }

            items.Add(item);
        }

        return items;
    }

    /// <summary>Something wrong with the map as a whole.</summary>
    public void Problem(string message) => Note(Line, path, $"{what}: {message}");

    /// <summary>Something wrong with what stands under a key.</summary>
    public void ProblemAt(string key, string message) =>
        Note(values.TryGetValue(key, out var node) ? node.Start.Line : Line, At(key), $"{what}: {message}");

    /// <summary>Notes a problem when the text under a key is there but of another form.</summary>
    public void MustMatch(string key, Regex pattern, string expected)
    {
        if (values.GetValueOrDefault(key) is YamlScalarNode { Value: { Length: > 0 } text } && !pattern.IsMatch(text))
        {
            ProblemAt(key, $"'{key}' {expected}");
        }
    }

    /// <summary>Gives the value back once everything known was asked for.</summary>
    public T Close<T>(T value)
    {
        NothingElse();
        return value;
    }

    /// <summary>To be called when everything known was asked for: what is left over is a mistake.</summary>
    public void NothingElse()
    {
        foreach (var key in values.Keys.Where(k => !asked.Contains(k)))
        {
            Note(values[key].Start.Line, At(key), RouteTexts.HasNoSuchKey(what, key, string.Join(", ", asked.Order())));
        }
    }

    private string At(string key) => path.Length == 0 ? key : $"{path}.{key}";

    private void Note(long line, string where, string message) => problems.Add(new(line, message) { Path = where });

    private IEnumerable<YamlNode> Nodes(string key) =>
        Take(key) switch
        {
            null => [],
            YamlSequenceNode sequence => sequence.Children,
            var node => Wrong<IEnumerable<YamlNode>>(node, key, RouteTexts.AList, []),
        };

    private YamlNode? Take(string key)
    {
        asked.Add(key);
        return values.GetValueOrDefault(key);
    }

    private T Missing<T>(string key, T instead)
    {
        asked.Add(key);
        ProblemAt(key, RouteTexts.IsMissing(key));
        return instead;
    }

    private T Wrong<T>(YamlNode node, string key, string expected, T instead = default!)
    {
        Note(node.Start.Line, At(key), RouteTexts.MustBe(key, expected));
        return instead;
    }
}
