using System.Collections;
using System.Reflection;
using System.Text.Json;

namespace Traceability.Web.Http;

/// <summary>A column of a table: its name, and its value of a row.</summary>
internal sealed record CsvColumn(string Name, Func<object?, object?> Of);

/// <summary>
/// The columns of a kind of row: one for every member that is a value or a list, those of every member that is itself a record, and one for
/// every key that a member with keys has in any of the rows.
/// </summary>
internal static class CsvColumns
{
    /// <summary>The columns, in the order of the members.</summary>
    public static IReadOnlyList<CsvColumn> Of(Type type, IReadOnlyCollection<object?> rows) => [.. Within(type, "", row => row, rows)];

    /// <summary>True for what fills one cell.</summary>
    public static bool IsFlat(Type type)
    {
        var plain = Nullable.GetUnderlyingType(type) ?? type;
        return plain.IsPrimitive
            || plain.IsEnum
            || plain == typeof(string)
            || plain == typeof(decimal)
            || plain == typeof(Guid)
            || plain == typeof(DateTimeOffset)
            || plain == typeof(DateOnly)
            || plain == typeof(NumberText);
    }

    private static IEnumerable<CsvColumn> Within(
        Type type,
        string before,
        Func<object?, object?> find,
        IReadOnlyCollection<object?> rows
    ) =>
        type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.GetIndexParameters().Length == 0)
            .SelectMany(p =>
                OfMember(
                    p.PropertyType,
                    before + JsonNamingPolicy.CamelCase.ConvertName(p.Name),
                    row => find(row) is { } owner ? p.GetValue(owner) : null,
                    rows
                )
            );

    private static IEnumerable<CsvColumn> OfMember(Type type, string name, Func<object?, object?> find, IReadOnlyCollection<object?> rows)
    {
        if (IsKeyed(type))
        {
            var keys = rows.SelectMany(r => find(r) is { } keyed ? Pairs(keyed).Select(p => p.Key) : []).Distinct().ToList();
            return keys.Select(k => new CsvColumn(
                $"{name}.{k}",
                row => find(row) is { } keyed ? Pairs(keyed).FirstOrDefault(p => p.Key == k).Value : null
            ));
        }

        return IsFlat(type) || typeof(IEnumerable).IsAssignableFrom(type) || type == typeof(JsonElement)
            ? [new(name, find)]
            : Within(Nullable.GetUnderlyingType(type) ?? type, name + ".", find, rows);
    }

    private static bool IsKeyed(Type type) =>
        new[] { type }
            .Concat(type.GetInterfaces())
            .Any(i =>
                i.IsGenericType && i.GetGenericTypeDefinition() == typeof(IReadOnlyDictionary<,>) && IsFlat(i.GetGenericArguments()[1])
            );

    private static IEnumerable<(string Key, object? Value)> Pairs(object keyed) =>
        from object pair in (IEnumerable)keyed
        select (Member(pair, "Key")!.ToString()!, Member(pair, "Value"));

    private static object? Member(object pair, string name) => pair.GetType().GetProperty(name)!.GetValue(pair);
}
