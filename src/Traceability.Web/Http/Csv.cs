using System.Collections;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Traceability.Web.Http;

/// <summary>
/// Tables as CSV (RFC 4180) for whoever asks with <c>Accept: text/csv</c>: every member that the JSON of a row has, under its JSON name;
/// what lies inside another is named with it, parted by a point (<see cref="CsvColumns"/>).
/// A text that a spreadsheet would run as a formula is made harmless by an apostrophe in front.
/// </summary>
public static class Csv
{
    /// <summary>Where the next part begins, when the table was cut.</summary>
    public const string NextHeader = "Next-Cursor";

    /// <summary>The media type of a table.</summary>
    public const string MediaType = "text/csv";

    /// <summary>
    /// True when the client would rather have CSV than JSON: by the weights of its Accept header, each taken from the range that names the
    /// type most closely (RFC 9110, 12.5.1); of two that weigh the same the one that is named more closely, then the one that is named
    /// first.
    /// </summary>
    public static bool IsWanted(HttpContext context)
    {
        var accepted = context.Request.GetTypedHeaders().Accept;
        var (csv, json) = (Weight("text", "csv"), Weight("application", "json"));
        return csv.Quality > 0 && csv.CompareTo(json) > 0;

        (double Quality, int Closeness, int Place) Weight(string type, string subtype) =>
            accepted
                .Select(
                    (range, i) =>
                        (
                            range,
                            Place: -i,
                            Closeness: range.MatchesAllTypes ? 1
                            : !range.Type.Equals(type, StringComparison.OrdinalIgnoreCase) ? 0
                            : range.MatchesAllSubTypes ? 2
                            : range.SubType.Equals(subtype, StringComparison.OrdinalIgnoreCase) ? 3
                            : 0
                        )
                )
                .Where(r => r.Closeness > 0)
                .OrderByDescending(r => r.Closeness)
                .Select(r => (r.range.Quality ?? 1, r.Closeness, r.Place))
                .FirstOrDefault();
    }

    /// <summary>Rows as a table with a heading.</summary>
    public static string Of<T>(IEnumerable<T> rows)
    {
        List<object?> all = [.. rows];
        var columns = CsvColumns.Of(typeof(T), all);
        var text = new StringBuilder();
        Line(columns.Select(c => c.Name));
        foreach (var row in all)
        {
            Line(columns.Select(c => Cell(c.Of(row))));
        }

        return text.ToString();

        void Line(IEnumerable<string> cells) => text.AppendJoin(',', cells.Select(Quoted)).Append("\r\n");
    }

    private static string Cell(object? value) =>
        value switch
        {
            null => "",
            string text => Harmless(text),
            bool flag => flag ? "true" : "false",
            DateTimeOffset time => time.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture),
            DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            NumberText number => number.Text,
            Enum word => JsonNamingPolicy.KebabCaseLower.ConvertName(word.ToString()),
            IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
            IEnumerable list when list.Cast<object?>().All(i => i is null || CsvColumns.IsFlat(i.GetType())) => Harmless(
                string.Join("; ", list.Cast<object?>().Select(Cell))
            ),
            _ => Harmless(JsonSerializer.Serialize(value, JsonRules.Options)),
        };

    private static string Harmless(string text) => text is ['=' or '+' or '-' or '@' or '\t' or '\r', ..] ? "'" + text : text;

    private static string Quoted(string cell) =>
        cell.AsSpan().IndexOfAny(",\"\r\n") < 0 ? cell : $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
