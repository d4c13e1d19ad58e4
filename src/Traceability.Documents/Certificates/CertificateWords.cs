using System.Globalization;
using Traceability.Domain.Certificates;

namespace Traceability.Documents.Certificates;

/// <summary>How a certificate words numbers and dates. Dates can be read in one way only: 25 Nov 2026, 14:20.</summary>
internal static class CertificateWords
{
    public const string Language = "en-GB";

    public const string None = "–";

    public static string Moment(DateTimeOffset at) => at.ToString("d MMM yyyy, HH:mm", CultureInfo.InvariantCulture);

    public static string Day(DateOnly? day) => day?.ToString("d MMM yyyy", CultureInfo.InvariantCulture) ?? None;

    public static string Day(DateTimeOffset at) => at.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    public static string Number(decimal? value) => value?.ToString(CultureInfo.InvariantCulture) ?? None;

    public static string Limits(MeasuredValue value) => (value.Lower, value.Upper) switch
    {
        ({ } lower, { } upper) => $"{Number(lower)} … {Number(upper)}",
        ({ } lower, null) => $"≥ {Number(lower)}",
        (null, { } upper) => $"≤ {Number(upper)}",
        _ => None,
    };

    public static string Film(FilmData film) => string.Join(", ", new[]
    {
        $"{Number(film.BaseThicknessUm)} µm film",
        film.MetalThicknessNm is { } metal ? $"{Number(metal)} nm metal" : null,
        film.SheetResistanceOhmPerSquare is { } sheet ? $"{Number(sheet)} Ω/sq" : null,
    }.OfType<string>());

    public static string Supplied(string? supplier, string? lot) =>
        (supplier, lot) switch
        {
            (null, null) => "",
            (null, _) => lot,
            (_, null) => supplier,
            _ => $"{supplier}, {lot}",
        };
}
