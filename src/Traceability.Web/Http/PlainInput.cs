using System.Text.Json.Serialization.Metadata;

namespace Traceability.Web.Http;

/// <summary>Marks a text that is a whole file and may be as long as the body.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class FileTextAttribute : Attribute;

/// <summary>
/// What every object read from JSON is looked through for: its texts are of a length that a person may have typed and hold no U+0000, which
/// PostgreSQL cannot keep; its lists hold things and not nulls, which the serializer does not ask. Done after reading and not by a
/// converter, so that the interface description still knows a text from a list.
/// </summary>
internal static class PlainInput
{
    private const int MaxLength = 4000;

    /// <summary>Makes every object look through its members once it has been read.</summary>
    public static void Require(JsonTypeInfo type)
    {
        if (type.Kind != JsonTypeInfoKind.Object)
        {
            return;
        }

        var texts = type
            .Properties.Where(p => p.Get is not null && p.PropertyType == typeof(string))
            .Select(p => (Member: p, Most: MostOf(p)))
            .ToList();
        var lists = type
            .Properties.Where(p =>
                p.Get is not null && p.PropertyType != typeof(string) && typeof(IEnumerable<object>).IsAssignableFrom(p.PropertyType)
            )
            .ToList();
        if (texts.Count + lists.Count > 0)
        {
            type.OnDeserialized = read =>
            {
                texts.ForEach(t => CheckText(t.Member.Name, t.Member.Get!(read) as string, t.Most));
                lists.ForEach(l => CheckList(l.Name, l.Get!(read) as IEnumerable<object?>));
            };
        }
    }

    private static int MostOf(JsonPropertyInfo member) =>
        member.AttributeProvider?.IsDefined(typeof(FileTextAttribute), true) == true ? int.MaxValue : MaxLength;

    private static void CheckList(string name, IEnumerable<object?>? items)
    {
        foreach (var item in items ?? [])
        {
            if (item is null)
            {
                throw new InputException(InputTexts.ListHoldsNull(name));
            }

            CheckText(name, item as string, MaxLength);
        }
    }

    private static void CheckText(string name, string? text, int most)
    {
        if (text?.Length > most)
        {
            throw new InputException(InputTexts.TextIsTooLong(name, text.Length, most));
        }

        if (text?.Contains('\0', StringComparison.Ordinal) == true)
        {
            throw new InputException(InputTexts.HoldsNul(name));
        }
    }
}
