using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.Json;

namespace Traceability.Web.Http;

/// <summary>
/// Tables as CSV (RFC 4180) for whoever asks with <c>Accept: text/csv</c>: the flat members of each row, under their JSON names.
/// A text that a spreadsheet would run as a formula is made harmless by an apostrophe in front.
/// </summary>
public static class Csv
{
    /// <summary>Where the next part begins, when the table was cut.</summary>
    public const string NextHeader = "Next-Cursor";

    /// <summary>True when the client asks for CSV.</summary>
    public static bool IsWanted(HttpContext context) =>
        context.Request.GetTypedHeaders().Accept.Any(a => a.MediaType.Equals("text/csv", StringComparison.OrdinalIgnoreCase));

    /// <summary>A page as JSON, or as CSV when that is asked for.</summary>
    public static IResult Answer<T>(HttpContext context, Page<T> page)
    {
        if (!IsWanted(context))
        {
            return Results.Ok(page);
        }

        if (page.Next is not null)
        {
            context.Response.Headers[NextHeader] = page.Next;
        }

        return Results.Text(Of(page.Items), "text/csv", Encoding.UTF8);
    }

    /// <summary>Rows as a table with a heading.</summary>
    public static string Of<T>(IEnumerable<T> rows)
    {
        var columns = typeof(T).GetProperties().Where(IsFlat).ToList();
        var text = new StringBuilder();
        Line(columns.Select(c => JsonNamingPolicy.CamelCase.ConvertName(c.Name)));
        foreach (var row in rows)
        {
            Line(columns.Select(c => Cell(c.GetValue(row))));
        }

        return text.ToString();

        void Line(IEnumerable<string> cells) => text.AppendJoin(',', cells.Select(Quoted)).Append("\r\n");
    }

    private static bool IsFlat(PropertyInfo property)
    {
        var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        return type.IsPrimitive || type.IsEnum || type == typeof(string) || type == typeof(decimal) || type == typeof(Guid)
            || type == typeof(DateTimeOffset) || type == typeof(DateOnly) || type == typeof(NumberText);
    }

    private static string Cell(object? value) => value switch
    {
        null => "",
        string text => Harmless(text),
        bool flag => flag ? "true" : "false",
        DateTimeOffset time => time.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture),
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        NumberText number => number.Text,
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };

    private static string Harmless(string text) => text is ['=' or '+' or '-' or '@' or '\t' or '\r', ..] ? "'" + text : text;

    private static string Quoted(string cell) => cell.AsSpan().IndexOfAny(",\"\r\n") < 0 ? cell : $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
