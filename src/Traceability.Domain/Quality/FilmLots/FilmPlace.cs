using Traceability.Domain.Records;

namespace Traceability.Domain.Quality.FilmLots;

/// <summary>
/// Where in the life of a film a stage lies, for whoever asks where the films of a lot fail. The field, where no stage is, is
/// <see cref="FilmPath.Field"/>.
/// </summary>
public static class FilmPlace
{
    private const string Soak = "soak",
        Insulation = "insulation",
        Acoustic = "acoustic",
        Final = "final";

    /// <summary>Every place, in the order of the workshop.</summary>
    public static IReadOnlyList<string> All { get; } =
    [PartKinds.Diaphragm, PartKinds.Capsule, Soak, Insulation, Acoustic, Final, FilmPath.Field];

    /// <summary>
    /// The place of a verdict: a climate soak, an insulation test, an acoustic test of a capsule; all else by the kind of part.
    /// </summary>
    /// <param name="kind">The kind of part that was judged.</param>
    /// <param name="stage">The stage.</param>
    /// <param name="method">The method that judged it; null is as good as none of those above.</param>
    public static string Of(string kind, string stage, string? method) =>
        kind == PartKinds.Unit ? Final
        : method == "climate-soak" ? Soak
        : Begins(method, Insulation) ? Insulation
        : kind == PartKinds.Capsule && (Begins(method, "response") || Begins(method, Acoustic) || Begins(stage, Acoustic)) ? Acoustic
        : kind;

    /// <summary>The kind of part that something reported by hand was reported of: of a unit the place is the final one.</summary>
    public static string KindOf(string place) => place == Final ? PartKinds.Unit : place;

    private static bool Begins(string? text, string beginning) => text?.StartsWith(beginning, StringComparison.Ordinal) is true;
}
