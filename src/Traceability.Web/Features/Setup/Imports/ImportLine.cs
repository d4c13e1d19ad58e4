using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Web.Features.Setup.Imports;

/// <summary>
/// One line of a table: reads its cells and notes what is wrong with each, so that all faults of a line are told at once.
/// </summary>
internal sealed class ImportLine(int number, IReadOnlyDictionary<string, string> cells, DecimalMarks marks, List<ImportProblem> problems)
{
    /// <summary>Its number in the file, from 1.</summary>
    public int Number => number;

    /// <summary>The text of a cell; empty when the column was left out.</summary>
    public string Text(string column) => cells.GetValueOrDefault(column) ?? "";

    /// <summary>The text of a cell, or null when it is empty.</summary>
    public string? May(string column) => Text(column) is { Length: > 0 } text ? text : null;

    /// <summary>A number; null when the cell is empty or holds none, which is then a problem.</summary>
    public decimal? NumberOf(string column)
    {
        if (May(column) is not { } text)
        {
            return null;
        }

        if (!marks.Agrees(text))
        {
            Refuse(column, ImportSentences.DecimalMarksAreMixed(text));
        }
        else if (EnteredDecimal.TryParse(text, out var read, out var problem))
        {
            return read.Value;
        }
        else
        {
            Refuse(column, problem);
        }

        return null;
    }

    /// <summary>A day; null when the cell is empty or holds none, which is then a problem.</summary>
    public DateOnly? DayOf(string column)
    {
        if (May(column) is not { } text)
        {
            return null;
        }

        if (DayText.TryRead(text, out var day, out var problem))
        {
            return day;
        }

        Refuse(column, problem);
        return null;
    }

    /// <summary>Roles by their names, parted by blanks, plus signs or bars.</summary>
    public IReadOnlyList<Role> RolesOf(string column)
    {
        var roles = new List<Role>();
        foreach (var name in CodesOf(column))
        {
            if (!int.TryParse(name, out _) && Enum.TryParse<Role>(name, true, out var role))
            {
                roles.Add(role);
            }
            else
            {
                var known = string.Join(", ", Enum.GetNames<Role>().Select(n => n.ToLowerInvariant()));
                Refuse(column, ImportSentences.NoSuchRole(name, known));
            }
        }

        return roles;
    }

    /// <summary>Codes, parted by blanks, plus signs or bars.</summary>
    public IReadOnlyList<string> CodesOf(string column) =>
        Text(column).Split([' ', '+', '|'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    /// <summary>Notes what is wrong with a cell.</summary>
    public void Refuse(string column, string message) => problems.Add(new(number, column, message));
}

/// <summary>What is wrong in a line.</summary>
/// <param name="Line" example="3">The line of the file, from 1.</param>
/// <param name="Field" example="badge">The column; empty when it is the line as a whole.</param>
/// <param name="Message" example="the badge BUILD1 belongs to somebody">What is wrong, and what to do.</param>
public sealed record ImportProblem(int Line, string Field, string Message);
