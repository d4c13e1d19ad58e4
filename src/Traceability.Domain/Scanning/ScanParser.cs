using System.Text.RegularExpressions;
using Traceability.Domain.Codes;
using Traceability.Domain.Values;

namespace Traceability.Domain.Scanning;

/// <summary>Tells what was scanned or typed into the one box. Pure, and total: every text is something.</summary>
/// <remarks>
/// In this order: nothing; a printed code (<see cref="PrintedCode"/>); the word of an action; a number; something meant as a number; bare
/// text. A serial that consists of digits only must therefore be scanned from its label. Checked by <c>ScanParserTests</c>.
/// </remarks>
public static partial class ScanParser
{
    /// <summary>The longest text that is looked at; the rest is cut off.</summary>
    public const int MaxLength = 500;

    /// <summary>Reads one entry of the scan box.</summary>
    public static Scan Parse(string? text)
    {
        var typed = Clean(text ?? "");
        if (typed.Length == 0)
            return new Scan.Nothing();
        return PrintedCode.Read(typed) switch
        {
            CodeReading.Good(var code) => OfCode(code),
            CodeReading.WrongCheck wrong => new Scan.WrongCheck(wrong.Kind, wrong.Id, wrong.Found, wrong.Expected),
            _ => StationActions.FromWord(typed) is { } action ? new Scan.Action(action) : NumberOrText(typed),
        };
    }

    private static Scan OfCode(PrintedCode code) =>
        code.Kind switch
        {
            CodeKind.Badge => new Scan.Badge(code.Id),
            CodeKind.Station => new Scan.Station(code.Id),
            CodeKind.Part => new Scan.Part(code.Id),
            CodeKind.Carrier => new Scan.Carrier(code.Id),
            CodeKind.Lot => new Scan.Lot(code.Id),
            CodeKind.Instrument => new Scan.Instrument(code.Id),
            CodeKind.Position => new Scan.Position(code.Id),
            CodeKind.Action when StationActions.FromWord(code.Id) is { } action => new Scan.Action(action),
            _ => new Scan.Bare(code.Text),
        };

    private static Scan NumberOrText(string typed)
    {
        if (EnteredDecimal.TryParseReading(typed, out var number, out var problem))
            return new Scan.Number(number, typed);
        return MeantAsNumber().IsMatch(typed) || HasUnit(typed) ? new Scan.BadNumber(typed, problem) : new Scan.Bare(typed);
    }

    // "12.5 mV" is a reading with its unit; "5A" may be somebody's lot number.
    private static bool HasUnit(string typed) =>
        NumberThenWord().Match(typed) is { Success: true } match
        && (match.Groups["number"].Value.AsSpan().IndexOfAny('.', ',') >= 0 || match.Groups["gap"].Length > 0)
        && Units.All.Any(unit => unit.Code == match.Groups["word"].Value || unit.Symbol == match.Groups["word"].Value);

    // Scanners and pasted text bring control characters along; none of them means anything here.
    private static string Clean(string text) =>
        string.Concat((text.Length > MaxLength ? text[..MaxLength] : text).Select(c => char.IsControl(c) ? ' ' : c)).Trim();

    [GeneratedRegex(
        @"^(>?[+\-\u2212]?[0-9.,' ]*[0-9][0-9.,' ]*([eE][+-]?[0-9]*)?|[+-]?(nan|inf|infinity|∞))$",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant
    )]
    private static partial Regex MeantAsNumber();

    [GeneratedRegex(@"^(?<number>[+\-\u2212]?[0-9]+([.,][0-9]+)?)(?<gap>\s*)(?<word>\S+)$", RegexOptions.CultureInvariant)]
    private static partial Regex NumberThenWord();
}
