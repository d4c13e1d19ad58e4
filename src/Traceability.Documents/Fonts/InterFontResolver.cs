using PdfSharp.Fonts;

namespace Traceability.Documents.Fonts;

/// <summary>Gives PDFsharp its only typeface: on a machine without fonts it would find none, on another one a different one.</summary>
internal sealed class InterFontResolver : IFontResolver
{
    private static readonly Lazy<bool> Installed = new(() =>
    {
        GlobalFontSettings.FontResolver = new InterFontResolver();
        return true;
    });

    /// The resolver is a global of the library and may be set once only.
    public static void EnsureInstalled() => _ = Installed.Value;

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(familyName);

    public byte[]? GetFont(string faceName) => InterFonts.TrueType(faceName);
}
