using System.Globalization;
using System.Text.RegularExpressions;

namespace Traceability.Domain.Routes.Drafts;

/// <summary>
/// Reads what was typed into a form whose fields are named as a draft's keys: <c>code</c>, <c>characteristics[0].lower</c>,
/// <c>parameters.numbers.ringRadiusMm</c>. A box that is not ticked is not sent; a line in which nothing but boxes was filled in is none.
/// </summary>
public static partial class DraftForm
{
    /// <summary>What was typed.</summary>
    /// <param name="shape">What the form is of: the head of a route, or a stage.</param>
    /// <param name="typed">The values by the names of their fields.</param>
    public static DraftMap Read(DraftField shape, IReadOnlyDictionary<string, string> typed)
    {
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(typed);
        return Read(shape, typed, "");
    }

    private static DraftMap Read(DraftField shape, IReadOnlyDictionary<string, string> typed, string path)
    {
        var map = new DraftMap();
        foreach (var field in shape.Fields)
        {
            var name = path + field.Key;
            var value = typed.GetValueOrDefault(name, "").Trim();
            switch (field.Sort)
            {
                case DraftSort.Flag:
                    map[field.Key] = typed.ContainsKey(name) ? "true" : "false";
                    break;
                case DraftSort.Number:
                    map[field.Key] = Number(value);
                    break;
                case DraftSort.Words:
                    map.List(field.Key).AddRange(Parts(value, ',', '\n'));
                    break;
                case DraftSort.Sentences:
                    map.List(field.Key).AddRange(Parts(value, '\n'));
                    break;
                case DraftSort.Items:
                    map.Items(field.Key)
                        .AddRange(Places(typed.Keys, name).Select(i => Read(field, typed, $"{name}[{i}].")).Where(m => SaysMore(m, field)));
                    break;
                case DraftSort.Group:
                    if (Read(field, typed, name + ".") is { } group && SaysMore(group, field))
                    {
                        group.CopyTo(map.Group(field.Key));
                    }

                    break;
                case DraftSort.Numbers:
                    foreach (var key in typed.Keys.Where(k => k.StartsWith(name + ".", StringComparison.Ordinal)))
                    {
                        map.Group(field.Key)[key[(name.Length + 1)..]] = Number(typed[key].Trim());
                    }

                    break;
                default:
                    map[field.Key] = value;
                    break;
            }
        }

        return map;
    }

    /// <summary>True when something but its boxes is filled in.</summary>
    private static bool SaysMore(DraftMap map, DraftField shape) =>
        shape.Fields.Any(f =>
            f.Sort switch
            {
                DraftSort.Flag => false,
                DraftSort.Words or DraftSort.Sentences => map.List(f.Key).Count > 0,
                DraftSort.Items => map.Items(f.Key).Count > 0,
                DraftSort.Group or DraftSort.Numbers => !map.Group(f.Key).IsEmpty,
                _ => map[f.Key] != "",
            }
        );

    private static IEnumerable<int> Places(IEnumerable<string> names, string list) =>
        names
            .Select(n => Regex.Match(n, $@"^{Regex.Escape(list)}\[([0-9]{{1,4}})\]\."))
            .Where(m => m.Success)
            .Select(m => int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture))
            .Distinct()
            .Order();

    private static IEnumerable<string> Parts(string value, params char[] separators) =>
        value.Split(separators, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    /// <summary>A number as route files write it: with a decimal point, where it was typed with a comma.</summary>
    private static string Number(string typed) => WithComma().IsMatch(typed) ? typed.Replace(',', '.') : typed;

    [GeneratedRegex(@"^-?[0-9]+,[0-9]+\z")]
    private static partial Regex WithComma();
}
