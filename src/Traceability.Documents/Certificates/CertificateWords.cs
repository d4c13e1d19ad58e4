using System.Globalization;
using System.Text.RegularExpressions;
using Traceability.Domain.Certificates;
using Traceability.Domain.Values;

namespace Traceability.Documents.Certificates;

/// <summary>How a certificate words numbers and dates. Dates can be read in one way only: 25 Nov 2026, 14:20.</summary>
internal static partial class CertificateWords
{
    public const string Language = "en-GB";

    public const string None = "–";

    /// Times carry their zone: a certificate leaves the workshop and its clock.
    public static string Moment(DateTimeOffset at) => WorkshopCalendar.WithZone(at);

    public static string Day(DateOnly? day) => day?.ToString("d MMM yyyy", CultureInfo.InvariantCulture) ?? None;

    public static string Day(DateTimeOffset at) => at.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    public static string Number(decimal? value) => value is { } number ? Typeset(number.ToString(CultureInfo.InvariantCulture)) : None;

    /// Digits as they were entered, or a sentence with numbers in it, as they are printed: with true minus signs, and "> 400" for ">400".
    public static string Typeset(string? text) => text is null ? "" : BoundFromBelow().Replace(Minus().Replace(text, "\u2212"), "> ");

    /// The same, as the beginning of a line.
    public static string Sentence(string text) => text.Length == 0 ? "" : Typeset(char.ToUpperInvariant(text[0]) + text[1..]);

    public static string Limits(MeasuredValue value) =>
        (value.Lower, value.Upper) switch
        {
            ({ } lower, { } upper) => $"{Number(lower)} to {Number(upper)}",
            ({ } lower, null) => $"at least {Number(lower)}",
            (null, { } upper) => $"at most {Number(upper)}",
            _ => None,
        };

    public static string Film(FilmData film) =>
        string.Join(
            ", ",
            new[]
            {
                $"{Number(film.BaseThicknessUm)} µm film",
                film.MetalThicknessNm is { } metal ? $"{Number(metal)} nm metal" : null,
                film.SheetResistanceOhmPerSquare is { } sheet ? $"{Number(sheet)} Ω/sq" : null,
            }.OfType<string>()
        );

    /// Where the workshop lets roles stand for names, the role is said once.
    public static string NameAndRole(StageSignature by) => by.Name == by.Role ? by.Role : $"{by.Name}, {by.Role}";

    public static string Supplied(string? supplier, string? lot) =>
        (supplier, lot) switch
        {
            (null, null) => "",
            (null, _) => lot,
            (_, null) => supplier,
            _ => $"{supplier}, {lot}",
        };

    /// The model is said where it is not the unit's own.
    public static string Routes(CertifiedRoute route, string unitModel) =>
        route.Title is not { } title ? $"{route.PartKind}: {route.Code}, revision {route.Revision}"
        : route.Model == unitModel ? $"{title}, revision {route.Revision}"
        : $"{title} {route.Model}, revision {route.Revision}";

    public static string Changed(ChangedValue value)
    {
        var unit = value.Unit is null ? "" : $" {value.Unit}";
        return (value.Was, value.Now) switch
        {
            (null, _) => $"{value.Label}: {Typeset(value.Now)}{unit}, not measured before",
            (_, null) => $"{value.Label}: not measured, was {Typeset(value.Was)}{unit}",
            _ => $"{value.Label}: {Typeset(value.Now)}{unit}, was {Typeset(value.Was)}",
        };
    }

    [GeneratedRegex(@"(?<![\w.,)\-/])-(?=\d)")]
    private static partial Regex Minus();

    [GeneratedRegex(@"^>(?=\d)")]
    private static partial Regex BoundFromBelow();
}
