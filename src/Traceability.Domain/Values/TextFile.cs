using System.Globalization;
using System.Resources;
using System.Runtime.CompilerServices;

namespace Traceability.Domain.Values;

/// <summary>
/// The sentences of one part of the product: a resource file beside the class that reads it, one member a sentence, the member's name being
/// the key. Checked by <c>TextFilesTests</c> and <c>SentencesTests</c>, which ask every member for its sentence.
/// </summary>
/// <remarks>
/// Words are taken in the language that the caller works in (<see cref="CultureInfo.CurrentUICulture"/>) and in English where that language
/// has none; nothing but words depends on it. Numbers in a sentence are always written alike, with a decimal point.
/// </remarks>
/// <param name="reader">The class that the sentences are read by; the resource file has its full name.</param>
public sealed class TextFile(Type reader)
{
    private readonly ResourceManager words = new(reader);

    /// <summary>The sentence called like the member that asks for it.</summary>
    /// <exception cref="MissingManifestResourceException">There is no such sentence.</exception>
    public string Say([CallerMemberName] string name = "") =>
        words.GetString(name, CultureInfo.CurrentUICulture) ?? throw new MissingManifestResourceException($"{reader.Name} has no '{name}'");

    /// <summary>The sentence with its parts put in for {0}, {1} and so on.</summary>
    public string Say(object?[] parts, [CallerMemberName] string name = "") =>
        string.Format(CultureInfo.InvariantCulture, Say(name), parts);
}
