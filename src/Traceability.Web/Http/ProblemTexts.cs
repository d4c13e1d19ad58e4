using System.Globalization;
using System.Resources;

namespace Traceability.Web.Http;

/// <summary>
/// What every kind of problem is called, means, and asks for. The words are in <c>ProblemTexts.resx</c>, three for each code.
/// </summary>
internal static class ProblemTexts
{
    private static readonly ResourceManager Words = new(typeof(ProblemTexts));

    /// <summary>Its name in a few words.</summary>
    public static string TitleOf(ProblemKind kind) => Say(kind, "Title");

    /// <summary>What happened, and what was kept.</summary>
    public static string MeaningOf(ProblemKind kind) => Say(kind, "Means");

    /// <summary>What to do.</summary>
    public static string RemedyOf(ProblemKind kind) => Say(kind, "Do");

    private static string Say(ProblemKind kind, string what) =>
        Words.GetString($"{kind.Code}.{what}", CultureInfo.CurrentUICulture)
        ?? throw new MissingManifestResourceException($"no words for the problem '{kind.Code}'");
}
