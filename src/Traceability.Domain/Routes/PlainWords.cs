using System.Text.RegularExpressions;
using Traceability.Domain.Values;

namespace Traceability.Domain.Routes;

/// <summary>
/// Findings are recorded with the names of characteristics and units by which programs know them; people read the route's labels and the
/// printed symbols instead: "insulation60s 57 GOhm is outside at least 100 GOhm" becomes "Insulation after 60 s 57 GΩ is below 100 GΩ".
/// </summary>
public static partial class PlainWords
{
    private static readonly string[] UnitCodes =
    [
        .. Units.All.Where(u => u.Code != u.Symbol).OrderByDescending(u => u.Code.Length).Select(u => Regex.Escape(u.Code)),
    ];

    private static readonly Regex Unit = new($@"(?<=\d) (?<code>{string.Join('|', UnitCodes)})(?![\w/])");

    /// <summary>The text with the names of one stage's characteristics said in words; of all stages, when none is known.</summary>
    public static string Of(Route? route, string? stage, string text)
    {
        IEnumerable<Stage> stages = route?.Find(stage ?? "") is { } one ? [one] : route?.Stages ?? [];
        text = OneSided().Replace(text, m => m.Groups["bound"].Value == "least" ? RouteTexts.IsBelow : RouteTexts.IsAbove);
        text = Unit.Replace(text, m => Units.SymbolOf(m.Groups["code"].Value) is { Length: > 0 } symbol ? $" {symbol}" : "");
        return stages
            .SelectMany(s => s.Characteristics)
            .DistinctBy(c => c.Name)
            .Aggregate(
                text,
                (said, c) =>
                    said.Contains(c.Name, StringComparison.Ordinal)
                        ? Regex.Replace(said, $@"\b{Regex.Escape(c.Name)}\b", _ => c.Label)
                        : said
            );
    }

    /// <summary>The code of a kind, lot kind or slot as words: "front-diaphragm" is read as "front diaphragm".</summary>
    public static string OfCode(string code) => code.Replace('-', ' ');

    /// <summary>How many of each kind: "18 × diaphragm, 12 × capsule".</summary>
    public static string Counted(IEnumerable<string> kinds) =>
        string.Join(", ", kinds.GroupBy(k => k).Select(g => $"{g.Count()} × {OfCode(g.Key)}"));

    [GeneratedRegex("is outside at (?<bound>least|most)")]
    private static partial Regex OneSided();
}
