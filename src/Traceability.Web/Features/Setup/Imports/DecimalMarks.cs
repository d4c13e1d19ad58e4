namespace Traceability.Web.Features.Setup.Imports;

/// <summary>
/// Whether a table writes decimal points or decimal commas: the first number with a mark settles it, for one that differs was copied from
/// somewhere else and may mean a thousand times as much.
/// </summary>
internal sealed class DecimalMarks
{
    private char settled;

    /// <summary>True when that number is written as those before it.</summary>
    public bool Agrees(string number)
    {
        if (number.IndexOfAny(['.', ',']) is not (>= 0 and var at))
        {
            return true;
        }

        settled = settled == default ? number[at] : settled;
        return number[at] == settled;
    }
}
