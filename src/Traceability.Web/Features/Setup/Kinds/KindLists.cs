using Traceability.Domain.Records;

namespace Traceability.Web.Features.Setup.Kinds;

/// <summary>The words by which the workshop's lists of kinds are asked for.</summary>
public static class KindLists
{
    /// <summary>All of them, parted by commas.</summary>
    public static string Words => string.Join(", ", Enum.GetValues<KindOf>().Select(WordOf));

    /// <summary>The word of a list.</summary>
    public static string WordOf(KindOf of) => of.ToString().ToLowerInvariant();

    /// <summary>The list of that word; null when there is none.</summary>
    public static KindOf? Read(string? word) =>
        Enum.GetValues<KindOf>().Where(of => WordOf(of) == word?.Trim()).Select(of => (KindOf?)of).FirstOrDefault();
}
