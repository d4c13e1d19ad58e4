using System.Globalization;
using System.Text;

namespace Traceability.Domain.Evidence;

/// <summary>Reads a text table line by line from its bytes: a heading that names the columns, then rows of fields.</summary>
/// <remarks>
/// Columns are separated by <c>;</c>, tab or <c>,</c>, whichever makes the heading name what is wanted. Lines end with LF, CRLF or CR;
/// empty lines and lines that begin with <c>#</c> are passed over; a UTF-8 byte order mark is passed over; fields may stand in double
/// quotes. The first number with a decimal mark settles whether the file writes a point or a comma; a later one that differs is refused,
/// and so is a file whose every comma might as well part thousands ("1,000" where 1 and 1000 are both possible).
/// Nothing is copied: one pass, no text is made except for messages.
/// </remarks>
internal sealed class DelimitedText
{
    private const int MostColumns = 64;

    private readonly ReadOnlyMemory<byte> _content;
    private readonly FindingList _findings;
    private readonly string[] _names;
    private readonly int[] _columnOf;
    private readonly Range[] _fields = new Range[MostColumns];
    private readonly byte _separator;
    private readonly int _fieldsInHeading;
    private int _at;
    private ReadOnlyMemory<byte> _line;
    private byte _decimalMark;
    private bool _commaIsDecimal;
    private int _doubtfulCommaLine;

    private DelimitedText(ReadOnlyMemory<byte> content, int start, FindingList findings, string[] names)
    {
        (_content, _at, _findings, _names) = (content, start, findings, names);
        _columnOf = new int[names.Length];
        if (!NextLine())
        {
            findings.Add(0, EvidenceTexts.FileIsEmptyAndNeedsColumns(string.Join(',', names)), FileFault.TooLittle);
            return;
        }
        _separator = SeparatorOf(_line.Span, names);
        _fieldsInHeading = Split(_line.Span);
        FindColumns();
    }

    /// <summary>The number of the present line in the file; the first is 1.</summary>
    public int Line { get; private set; }

    /// <summary>Opens the table when its heading names all the columns; otherwise says why not in the findings.</summary>
    public static DelimitedText? Open(ReadOnlyMemory<byte> content, string[] names, FindingList findings)
    {
        var bytes = content.Span;
        if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] || bytes[..Math.Min(200, bytes.Length)].Contains((byte)0))
        {
            findings.Add(0, EvidenceTexts.NotPlainTextInUtf8, FileFault.WrongFormat);
            return null;
        }
        var table = new DelimitedText(content, bytes is [0xEF, 0xBB, 0xBF, ..] ? 3 : 0, findings, names);
        return findings.Any ? null : table;
    }

    /// <summary>Moves to the next row that has as many fields as the heading; rows that have not become problems.</summary>
    public bool NextRow()
    {
        while (!_findings.IsFull && NextLine())
        {
            var count = Split(_line.Span);
            if (count == _fieldsInHeading)
                return true;
            var hint = _separator == (byte)',' && count > _fieldsInHeading ? EvidenceTexts.ColumnsWithDecimalCommas : "";
            _findings.Add(Line, EvidenceTexts.LineHasAnotherNumberOfColumns(_fieldsInHeading, count, hint));
        }
        if (_doubtfulCommaLine > 0 && !_commaIsDecimal && !_findings.IsFull)
            _findings.Add(_doubtfulCommaLine, EvidenceTexts.CommaIsUnclear);
        return false;
    }

    /// <summary>A field of the present row, without quotes and blanks around it.</summary>
    public ReadOnlySpan<byte> Field(int column) => Bare(_line.Span[_fields[_columnOf[column]]]);

    /// <summary>A finite number between two limits, or nothing and a problem.</summary>
    public double? Number(int column, double lowest, double highest)
    {
        var field = Field(column);
        if (field.IsEmpty)
            return Refuse(column, EvidenceTexts.IsEmpty);
        if (!TryNumber(field, out var value))
            return Refuse(column, EvidenceTexts.IsNotAPlainNumber(Shown(field)));
        WeighComma(field, value * 1000 >= lowest && value * 1000 <= highest);
        if (value >= lowest && value <= highest)
            return value;
        return Refuse(column, EvidenceTexts.IsNotBetween(Shown(field), lowest, highest));
    }

    /// <summary>The field as it may be shown in a message: short and printable.</summary>
    public static string Shown(ReadOnlySpan<byte> field)
    {
        var text = Encoding.UTF8.GetString(field.Length > 40 ? field[..40] : field);
        return string.Concat(text.Select(c => char.IsControl(c) ? '?' : c)) + (field.Length > 40 ? "..." : "");
    }

    private double? Refuse(int column, string because)
    {
        _findings.Add(Line, $"{_names[column]} {because}.");
        return null;
    }

    private bool TryNumber(ReadOnlySpan<byte> field, out double value)
    {
        value = 0;
        var mark = field.IndexOfAny((byte)'.', (byte)',');
        if (mark < 0)
            return TryPlain(field, out value);
        if (_decimalMark == 0)
            _decimalMark = field[mark];
        if (field[mark] != _decimalMark || field.Length > 40)
            return false;
        if (_decimalMark == (byte)'.')
            return TryPlain(field, out value);

        Span<byte> withPoint = stackalloc byte[field.Length];
        field.CopyTo(withPoint);
        withPoint[mark] = (byte)'.';
        return TryPlain(withPoint, out value);
    }

    private void WeighComma(ReadOnlySpan<byte> field, bool thousandsFit)
    {
        if (_commaIsDecimal || field.IndexOf((byte)',') is not (>= 0 and var comma))
            return;
        if (thousandsFit && field.Length - comma == 4)
            _doubtfulCommaLine = _doubtfulCommaLine > 0 ? _doubtfulCommaLine : Line;
        else
            _commaIsDecimal = true;
    }

    private static bool TryPlain(ReadOnlySpan<byte> field, out double value) =>
        double.TryParse(
            field,
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent,
            CultureInfo.InvariantCulture,
            out value
        ) && double.IsFinite(value);

    private bool NextLine()
    {
        var bytes = _content.Span;
        while (_at < bytes.Length)
        {
            var rest = bytes[_at..];
            var end = rest.IndexOfAny((byte)'\n', (byte)'\r');
            var length = end < 0 ? rest.Length : end;
            _line = _content.Slice(_at, length);
            _at +=
                length
                + (
                    end < 0 ? 0
                    : rest[end..].StartsWith("\r\n"u8) ? 2
                    : 1
                );
            Line++;
            var content = _line.Span.Trim(" \t"u8);
            if (!content.IsEmpty && content[0] != (byte)'#')
                return true;
        }
        return false;
    }

    private int Split(ReadOnlySpan<byte> line)
    {
        var (count, start) = (0, 0);
        while (true)
        {
            var length = FieldLength(line[start..]);
            if (count < MostColumns)
                _fields[count] = start..(start + length);
            count++;
            start += length + 1;
            if (start > line.Length)
                return count;
        }
    }

    private int FieldLength(ReadOnlySpan<byte> rest)
    {
        var end = rest.IndexOfAny(_separator, (byte)'"');
        while (end >= 0 && rest[end] == (byte)'"') // a separator between quotes parts nothing
        {
            var close = rest[(end + 1)..].IndexOf((byte)'"');
            if (close < 0)
                return rest.Length;
            var after = end + close + 2;
            var next = rest[after..].IndexOfAny(_separator, (byte)'"');
            end = next < 0 ? -1 : after + next;
        }
        return end < 0 ? rest.Length : end;
    }

    private void FindColumns()
    {
        if (_fieldsInHeading > MostColumns)
        {
            _findings.Add(Line, EvidenceTexts.TooManyColumns(_fieldsInHeading, MostColumns), FileFault.WrongFormat);
            return;
        }
        var heading = new string[_fieldsInHeading];
        for (var i = 0; i < heading.Length; i++)
            heading[i] = Shown(Bare(_line.Span[_fields[i]]));

        for (var column = 0; column < _names.Length; column++)
        {
            var name = _names[column];
            _columnOf[column] = Array.FindIndex(heading, shown => Same(shown, name));
            if (_columnOf[column] < 0)
                _findings.Add(Line, EvidenceTexts.HeadingMustNameTheColumn(name, string.Join(" | ", heading)));
            else if (heading.Count(shown => Same(shown, name)) > 1)
                _findings.Add(Line, EvidenceTexts.HeadingNamesTheColumnMore(name));
        }
        var unused = heading.Where(shown => !_names.Any(name => Same(shown, name))).ToArray();
        if (unused.Length > 0)
            _findings.Note(EvidenceTexts.ColumnsNotUsed(string.Join(", ", unused)));
    }

    // The heading is the only line whose words are known beforehand, so it alone tells the separator for certain.
    private static byte SeparatorOf(ReadOnlySpan<byte> heading, string[] names)
    {
        var text = Encoding.UTF8.GetString(heading.Length > 4000 ? heading[..4000] : heading);
        return (byte)
            ";\t,".MaxBy(separator => text.Split(separator).Count(field => names.Any(name => Same(field.Trim(' ', '\t', '"'), name))));
    }

    private static bool Same(string shown, string name) => string.Equals(shown, name, StringComparison.OrdinalIgnoreCase);

    private static ReadOnlySpan<byte> Bare(ReadOnlySpan<byte> field)
    {
        var trimmed = field.Trim(" \t"u8);
        return trimmed is [(byte)'"', .., (byte)'"'] ? trimmed[1..^1].Trim(" \t"u8) : trimmed;
    }
}
