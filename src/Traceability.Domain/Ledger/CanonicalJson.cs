using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Traceability.Domain.Ledger;

/// <summary>One and only one text for a JSON value (RFC 8785, JSON Canonicalization Scheme), so that its hash means something.</summary>
/// <remarks>
/// No white space; keys in the order of their UTF-16 code units; numbers as ECMAScript writes them; only the escapes that JSON
/// cannot do without. Numbers are IEEE doubles: an integer above 2^53 loses digits, so serials and other long numbers belong in
/// strings, and so do readings whose digits must stay as entered. Duplicate keys, lone surrogates and numbers beyond a double are
/// refused with <see cref="CanonicalJsonException"/>. Checked by <c>CanonicalJsonTests</c> against the samples of the RFC.
/// </remarks>
public static class CanonicalJson
{
    private const int DeepestNesting = 128;

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private static readonly JsonDocumentOptions DuplicatesAreOurs = new() { AllowDuplicateProperties = true, MaxDepth = DeepestNesting };

    /// <summary>The canonical text of a node; <see langword="null"/> is JSON's null.</summary>
    public static string Text(JsonNode? node) => Guarded(text => Write(text, node, 0));

    /// <summary>The canonical text of an element.</summary>
    public static string Text(JsonElement element) => Guarded(text => Write(text, element, 0));

    /// <summary>The canonical text of a JSON text.</summary>
    /// <exception cref="CanonicalJsonException">It is not JSON, or has no canonical form.</exception>
    public static string FromText(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        try
        {
            using var document = JsonDocument.Parse(json, DuplicatesAreOurs);
            return Text(document.RootElement);
        }
        catch (JsonException notJson)
        {
            throw new CanonicalJsonException("This is not JSON: " + notJson.Message, notJson);
        }
    }

    /// <summary>The canonical text of a node as UTF-8 without a byte order mark: the bytes that are hashed.</summary>
    public static byte[] Bytes(JsonNode? node) => Utf8.GetBytes(Text(node));

    /// <summary>The canonical text of an element as UTF-8 without a byte order mark: the bytes that are hashed.</summary>
    public static byte[] Bytes(JsonElement element) => Utf8.GetBytes(Text(element));

    // System.Text.Json reports a key given twice and a lone surrogate only when the value is looked at, each in its own way.
    private static string Guarded(Action<StringBuilder> write)
    {
        var text = new StringBuilder();
        try
        {
            write(text);
        }
        catch (Exception unwritable)
            when (unwritable is InvalidOperationException or ArgumentException or JsonException or NotSupportedException)
        {
            throw new CanonicalJsonException("This JSON has no canonical form: " + unwritable.Message, unwritable);
        }
        return text.ToString();
    }

    private static void Write(StringBuilder text, JsonNode? node, int depth)
    {
        switch (node)
        {
            case null:
                text.Append("null");
                break;
            case JsonObject members:
                WriteObject(text, members.Select(member => (member.Key, member.Value)), Write, depth);
                break;
            case JsonArray items:
                WriteArray(text, items, Write, depth);
                break;
            case JsonValue value when value.TryGetValue<JsonElement>(out var element):
                Write(text, element, depth);
                break;
            case JsonValue value when value.TryGetValue<string>(out var content):
                WriteString(text, content);
                break;
            case JsonValue value when value.TryGetValue<double>(out var number):
                text.Append(EcmaScriptNumber.Format(number));
                break;
            default: // what is left (Guid, decimal, dates, booleans) knows its own JSON
                using (var document = JsonDocument.Parse(node.ToJsonString(), DuplicatesAreOurs))
                    Write(text, document.RootElement, depth);
                break;
        }
    }

    private static void Write(StringBuilder text, JsonElement element, int depth)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                WriteObject(text, element.EnumerateObject().Select(member => (member.Name, member.Value)), Write, depth);
                break;
            case JsonValueKind.Array:
                WriteArray(text, element.EnumerateArray(), Write, depth);
                break;
            case JsonValueKind.String:
                WriteString(text, element.GetString()!);
                break;
            case JsonValueKind.Number:
                text.Append(EcmaScriptNumber.Format(element.GetDouble()));
                break;
            case JsonValueKind.Undefined:
                throw new CanonicalJsonException("There is no value here at all.");
            default:
                text.Append(element.GetRawText());
                break;
        }
    }

    private static void WriteObject<T>(
        StringBuilder text,
        IEnumerable<(string Name, T Value)> members,
        Action<StringBuilder, T, int> write,
        int depth
    )
    {
        var nested = Deeper(depth);
        string? previous = null;
        text.Append('{');
        foreach (var (name, value) in members.OrderBy(member => member.Name, StringComparer.Ordinal)) // ordinal = by UTF-16 code units
        {
            if (name == previous)
                throw new CanonicalJsonException($"The key \"{name}\" is given twice.");
            if (previous is not null)
                text.Append(',');
            WriteString(text, name);
            text.Append(':');
            write(text, value, nested);
            previous = name;
        }
        text.Append('}');
    }

    private static void WriteArray<T>(StringBuilder text, IEnumerable<T> items, Action<StringBuilder, T, int> write, int depth)
    {
        var nested = Deeper(depth);
        var first = true;
        text.Append('[');
        foreach (var item in items)
        {
            if (!first)
                text.Append(',');
            write(text, item, nested);
            first = false;
        }
        text.Append(']');
    }

    private static int Deeper(int depth) =>
        depth < DeepestNesting ? depth + 1 : throw new CanonicalJsonException($"Nested more than {DeepestNesting} deep.");

    private static void WriteString(StringBuilder text, string content)
    {
        text.Append('"');
        for (var i = 0; i < content.Length; i++)
        {
            var c = content[i];
            if (!char.IsSurrogate(c))
            {
                if (Escaped(c) is { } escape)
                    text.Append(escape);
                else
                    text.Append(c);
            }
            else if (i + 1 < content.Length && char.IsSurrogatePair(c, content[i + 1]))
            {
                text.Append(c).Append(content[++i]);
            }
            else
                throw new CanonicalJsonException($"Half a surrogate pair (U+{(int)c:X4}) at position {i} of a string.");
        }
        text.Append('"');
    }

    private static string? Escaped(char c) =>
        c switch
        {
            '"' => "\\\"",
            '\\' => "\\\\",
            '\b' => "\\b",
            '\t' => "\\t",
            '\n' => "\\n",
            '\f' => "\\f",
            '\r' => "\\r",
            < ' ' => $"\\u{(int)c:x4}",
            _ => null,
        };
}
