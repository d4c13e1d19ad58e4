using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;

namespace Traceability.Web.Features.Setup.Imports;

/// <summary>
/// Something that can be entered many at once. Each line goes through the use case that a page or a program would call for it, so nothing
/// can be imported that could not be entered one by one.
/// </summary>
public abstract class ImportKind(string code, IReadOnlyList<ImportColumn> columns, params Role[] roles)
{
    /// <summary>Its name in the address.</summary>
    public string Code => code;

    /// <summary>The columns of its table.</summary>
    public IReadOnlyList<ImportColumn> Columns => columns;

    /// <summary>True for people who may import it.</summary>
    public bool IsFor(Actor actor) => roles.Any(actor.Is);

    /// <summary>A table with the heading and one line, to be filled in.</summary>
    public string Template =>
        string.Join(',', columns.Select(c => c.Name)) + "\r\n" + string.Join(',', columns.Select(c => c.Example)) + "\r\n";

    /// <summary>Records what a line says; why not, when it cannot be.</summary>
    internal abstract Task<Refusal?> AddAsync(ImportLine line, Actor actor, CancellationToken cancellation);

    /// <summary>The column that a fault of that name in the use case is about.</summary>
    internal virtual string ColumnOf(string field) =>
        columns.FirstOrDefault(c => string.Equals(c.Name, field, StringComparison.OrdinalIgnoreCase))?.Name ?? "";
}
