using System.Text;
using System.Xml;

namespace Traceability.Documents.Drawing;

/// <summary>Text that XML can hold: what it forbids (control characters, half surrogates) becomes the replacement character.</summary>
internal static class XmlText
{
    public static string Clean(string text)
    {
        var clean = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
            clean.Append(rune.IsBmp && !XmlConvert.IsXmlChar((char)rune.Value) ? Rune.ReplacementChar.ToString() : rune.ToString());
        return clean.ToString();
    }
}
