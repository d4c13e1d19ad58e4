using System.Globalization;
using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Traceability.Web.Http;

/// <summary>What is wrong with a body or an address, said by a reader of ours; shown as it is, with the place where it was found.</summary>
public sealed class InputException(string message) : JsonException(message);

/// <summary>
/// Says to a client what is wrong with what it sent, in words of the interface: the framework's own sentences name types of this program
/// and give advice to its authors. With the field where one is to blame.
/// </summary>
internal static partial class InputWords
{
    private static readonly Assembly[] Ours = [typeof(InputWords).Assembly, typeof(Domain.Records.Fact).Assembly];

    /// <summary>The words for what could not be read, and the field that they are about.</summary>
    public static (string Words, string? Field) Of(BadHttpRequestException bad) =>
        bad switch
        {
            { InnerException: InputException own } => (own.Message, FieldOf(own.Path)),
            { InnerException: JsonException json } => OfJson(json),
            _ when Unbound().Match(bad.Message) is { Success: true } m => (
                InputTexts.CannotBeRead(m.Groups["text"].Value, KindOf(m.Groups["type"].Value)),
                m.Groups["name"].Value
            ),
            _ when Missing().Match(bad.Message) is { Success: true } m && m.Groups["where"].Value == "query string" => (
                InputTexts.IsMissingInTheQuery(m.Groups["name"].Value),
                m.Groups["name"].Value
            ),
            _ when Framework().IsMatch(bad.Message) => (InputTexts.ABodyIsExpected, null),
            _ => (bad.Message, null),
        };

    private static (string Words, string? Field) OfJson(JsonException json)
    {
        var (said, place) = (json.Message, FieldOf(json.Path));
        if (MissingMembers().Match(said) is { Success: true } missing)
        {
            var names = missing.Groups["names"].Value.Replace("'", "", StringComparison.Ordinal);
            return (InputTexts.IsMissing(names), Within(place, names.Split(',')[0].Trim()));
        }

        if (Unknown().Match(said) is { Success: true } unknown)
        {
            return (InputTexts.ThereIsNoMember(unknown.Groups["name"].Value), unknown.Groups["name"].Value);
        }

        if (Twice().Match(said) is { Success: true } twice)
        {
            return (InputTexts.IsThereTwice(twice.Groups["name"].Value), twice.Groups["name"].Value);
        }

        if (NotNull().Match(said) is { Success: true } none)
        {
            var name = JsonNamingPolicy.CamelCase.ConvertName(none.Groups["name"].Value);
            return (InputTexts.MayNotBeNull(name), Within(place, name));
        }

        return Converted().Match(said) is { Success: true } other
                ? (InputTexts.IsSomethingElse(place ?? InputTexts.TheBody, KindOf(other.Groups["type"].Value, place)), place)
            : said.Contains("depth", StringComparison.Ordinal) ? (InputTexts.IsNestedTooDeeply, null)
            : (InputTexts.IsNotJson(json.LineNumber is { } line ? InputTexts.At(line + 1, json.BytePositionInLine + 1) : ""), null);
    }

    private static string? FieldOf(string? path) =>
        path is null or "$" ? null
        : path.StartsWith("$.", StringComparison.Ordinal) ? path[2..]
        : path.TrimStart('$');

    private static string Within(string? place, string name) =>
        place is null || place == name || place.EndsWith("." + name, StringComparison.Ordinal)
            ? name
            : string.Create(CultureInfo.InvariantCulture, $"{place}.{name}");

    /// <summary>What is expected where a type of ours stands: in the words of somebody who knows JSON only.</summary>
    /// <param name="type">The type as the framework names it; of a member it names the type that has it.</param>
    /// <param name="place">Where it stands.</param>
    private static string KindOf(string type, string? place = null)
    {
        if (Ours.Select(a => a.GetType(type)).FirstOrDefault(t => t is not null) is { } found)
        {
            var member =
                found
                    .GetProperties()
                    .FirstOrDefault(p => JsonNamingPolicy.CamelCase.ConvertName(p.Name) == place?.Split('.')[^1])
                    ?.PropertyType
                ?? found;
            return (Nullable.GetUnderlyingType(member) ?? member) is { IsEnum: true } words
                ? InputTexts.OneOf(string.Join(", ", Enum.GetNames(words).Select(JsonNamingPolicy.KebabCaseLower.ConvertName)))
                : KindNamed(member.ToString());
        }

        return KindNamed(type);
    }

    private static string KindNamed(string type)
    {
        var plain = type.Replace("System.Nullable`1[", "", StringComparison.Ordinal)
            .Replace("Nullable<", "", StringComparison.Ordinal)
            .TrimEnd(']', '>', '?');
        return plain[(plain.LastIndexOf('.') + 1)..].ToLowerInvariant() switch
        {
            _ when type.Contains("List", StringComparison.Ordinal)
                    || type.Contains("Collection", StringComparison.Ordinal)
                    || type.EndsWith("[]", StringComparison.Ordinal) => InputTexts.AList,
            "string" => InputTexts.AText,
            "int" or "int32" or "long" or "int64" => InputTexts.AWholeNumber,
            "decimal" or "double" or "numbertext" => InputTexts.ANumber,
            "bool" or "boolean" => InputTexts.TrueOrFalse,
            "guid" => InputTexts.AnId,
            "datetimeoffset" => InputTexts.ATime,
            "dateonly" => InputTexts.ADay,
            _ => InputTexts.AnObject,
        };
    }

    [GeneratedRegex("""^Failed to bind parameter "(?<type>.+) (?<name>\w+)" from "(?<text>.*)"\.$""", RegexOptions.Singleline)]
    private static partial Regex Unbound();

    [GeneratedRegex("""^Required parameter "(?<type>.+) (?<name>\w+)" was not provided from (?<where>[\w ]+)\.$""")]
    private static partial Regex Missing();

    [GeneratedRegex("^(Failed to read parameter|Required parameter|Implicit body|Expected a supported)")]
    private static partial Regex Framework();

    [GeneratedRegex("missing required properties including: (?<names>.+?)\\.?$")]
    private static partial Regex MissingMembers();

    [GeneratedRegex("The JSON property '(?<name>.*)' could not be mapped to any \\.NET member", RegexOptions.Singleline)]
    private static partial Regex Unknown();

    [GeneratedRegex("Duplicate property '(?<name>.*)' encountered", RegexOptions.Singleline)]
    private static partial Regex Twice();

    [GeneratedRegex("(?:constructor parameter|property or field) '(?<name>.*?)' on type .* (?:doesn't|does not) allow")]
    private static partial Regex NotNull();

    [GeneratedRegex(@"could not be converted to (?<type>.+?)\. Path:|^Unable to .* (?<type>System\.\w+)")]
    private static partial Regex Converted();
}
