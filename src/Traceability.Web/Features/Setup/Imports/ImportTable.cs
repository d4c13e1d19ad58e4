using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace Traceability.Web.Features.Setup.Imports;

/// <summary>
/// A table as it was sent or pasted: a heading that names the columns, then a line for each thing. Columns are parted by semicolon, tab or
/// comma, whichever makes the heading name what is wanted; blank lines and lines that begin with # are passed over.
/// </summary>
internal static class ImportTable
{
    /// <summary>More at once nobody looks through before saying yes.</summary>
    public const int MostLines = 5000;

    /// <summary>Far more than so many lines need.</summary>
    public const int MostBytes = 2 * 1024 * 1024;

    /// <summary>Every problem beyond these says the same again.</summary>
    public const int MostProblems = 200;

    /// <summary>The lines of the table; none when the heading is not right, which the problems then say.</summary>
    public static IReadOnlyList<ImportLine> Read(string text, IReadOnlyList<ImportColumn> columns, List<ImportProblem> problems)
    {
        var separator = SeparatorOf(text, columns);
        using var parser = new CsvParser(
            new StringReader(text.TrimStart('\uFEFF')),
            new CsvConfiguration(CultureInfo.InvariantCulture)
            {
                Delimiter = separator.ToString(),
                AllowComments = true,
                TrimOptions = TrimOptions.Trim,
                BadDataFound = null,
            }
        );
        if (!parser.Read())
        {
            problems.Add(new(1, "", ImportSentences.TableIsEmpty(Names(columns))));
            return [];
        }

        var heading = parser.Record!;
        var headingLine = parser.RawRow;
        if (HeadingProblem(heading, columns) is { } wrong)
        {
            problems.Add(new(headingLine, "", wrong));
            return [];
        }

        var places = heading.Select(name => columns.First(c => Same(c.Name, name)).Name).ToArray();
        var marks = new DecimalMarks();
        var lines = new List<ImportLine>();
        while (parser.Read())
        {
            var cells = parser.Record!;
            if (cells.All(string.IsNullOrEmpty))
            {
                continue;
            }

            if (cells.Length != places.Length)
            {
                problems.Add(new(parser.RawRow, "", ImportSentences.LineHasAnotherNumberOfFields(cells.Length, places.Length)));
                continue;
            }

            lines.Add(new(parser.RawRow, places.Zip(cells).ToDictionary(p => p.First, p => p.Second), marks, problems));
        }

        return lines;
    }

    private static string? HeadingProblem(string[] heading, IReadOnlyList<ImportColumn> columns)
    {
        var unknown = heading.Where(name => !columns.Any(c => Same(c.Name, name))).ToArray();
        var missing = columns.Where(c => c.Required && !heading.Any(name => Same(c.Name, name))).Select(c => c.Name).ToArray();
        var twice = columns.Where(c => heading.Count(name => Same(c.Name, name)) > 1).Select(c => c.Name).ToArray();
        return missing.Length > 0 ? ImportSentences.HeadingLacks(string.Join(", ", missing), Names(columns))
            : unknown.Length > 0 ? ImportSentences.HeadingNamesUnknown(string.Join(", ", unknown), Names(columns))
            : twice.Length > 0 ? ImportSentences.HeadingNamesTwice(string.Join(", ", twice))
            : null;
    }

    private static string Names(IReadOnlyList<ImportColumn> columns) => string.Join(", ", columns.Select(c => c.Name));

    private static char SeparatorOf(string text, IReadOnlyList<ImportColumn> columns)
    {
        var heading = text.Split('\n').FirstOrDefault(l => l.Trim().Length > 0 && !l.StartsWith('#')) ?? "";
        return ";\t,".MaxBy(s => heading.Split(s).Count(name => columns.Any(c => Same(c.Name, name.Trim().Trim('"')))));
    }

    /// <summary>Spreadsheets say "Supplier lot" or "supplier_lot" where the contract says supplierLot.</summary>
    private static bool Same(string column, string heading) =>
        string.Equals(column, string.Concat(heading.Where(char.IsLetterOrDigit)), StringComparison.OrdinalIgnoreCase);
}

/// <summary>A column of a table that can be imported.</summary>
public sealed record ImportColumn(string Name, bool Required, string Example);
