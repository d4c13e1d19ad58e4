using Traceability.Domain.Values;

namespace Traceability.Domain.Stages.FilmLot;

/// <summary>What the inspection of film finds, and what it cannot judge. Their words are in <c>FilmTexts.resx</c>.</summary>
internal static class FilmTexts
{
    private static readonly TextFile Words = new(typeof(FilmTexts));

    internal static string BaseFilmCannotBe(decimal entered) => Words.Say([entered]);

    internal static string MetalCannotBe(decimal entered) => Words.Say([entered]);

    internal static string DiscCannotBe(decimal? discMass) => Words.Say([discMass]);

    internal static string SheetResistanceCannotBe(decimal? sheetResistanceOhm) => Words.Say([sheetResistanceOhm]);

    internal static string LayerIsThicker => Words.Say();
    internal static string LayerIsThinner => Words.Say();
}
