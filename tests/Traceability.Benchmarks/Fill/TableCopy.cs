using System.Linq.Expressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Npgsql;

namespace Traceability.Benchmarks;

/// <summary>Copies rows of one type into its table in binary form, column by column as the model of the service names them.</summary>
internal sealed class TableCopy
{
    private readonly string start;
    private readonly Action<NpgsqlBinaryImporter, object> write;

    public TableCopy(IEntityType entity)
    {
        var columns = entity.GetProperties().ToList();
        var table = StoreObjectIdentifier.Table(entity.GetTableName()!);
        start = $"copy {table.Name} ({string.Join(", ", columns.Select(c => c.GetColumnName(table)))}) from stdin (format binary)";
        write = Writer(entity.ClrType, columns);
    }

    public async Task RunAsync(NpgsqlConnection connection, IReadOnlyList<object> rows)
    {
        await using var importer = await connection.BeginBinaryImportAsync(start);
        foreach (var row in rows)
        {
            // Into the buffer; the importer sends it when it is full.
            importer.StartRow();
            write(importer, row);
        }

        await importer.CompleteAsync();
    }

    /// <summary>
    /// One compiled method for all columns: looking them up for every one of a hundred million rows would take longer than the database.
    /// </summary>
    private static Action<NpgsqlBinaryImporter, object> Writer(Type type, IEnumerable<IProperty> columns)
    {
        var (importer, row) = (Expression.Parameter(typeof(NpgsqlBinaryImporter)), Expression.Parameter(typeof(object)));
        var typed = Expression.Convert(row, type);
        var writes = columns.Select(c => Write(importer, Stored(Expression.Property(typed, c.PropertyInfo!), c), c.GetColumnType()));
        return Expression.Lambda<Action<NpgsqlBinaryImporter, object>>(Expression.Block(writes), importer, row).Compile();
    }

    /// <summary>The value as the column holds it: enumerations by name.</summary>
    private static Expression Stored(Expression value, IProperty column)
    {
        var plain = Nullable.GetUnderlyingType(value.Type) ?? value.Type;
        return !plain.IsEnum ? value
            : plain == value.Type ? Expression.Call(value, nameof(ToString), null)
            : Expression.Condition(
                Expression.Property(value, "HasValue"),
                Expression.Call(Expression.Property(value, "Value"), nameof(ToString), null),
                Expression.Constant(null, typeof(string))
            );
    }

    private static Expression Write(Expression importer, Expression value, string columnType)
    {
        var isNullableStruct = Nullable.GetUnderlyingType(value.Type) is not null;
        var plain = isNullableStruct ? Expression.Property(value, "Value") : value;
        var written = Expression.Call(importer, nameof(NpgsqlBinaryImporter.Write), [plain.Type], plain, Expression.Constant(columnType));
        return value.Type.IsValueType && !isNullableStruct
            ? written
            : Expression.IfThenElse(
                Expression.Equal(value, Expression.Constant(null, value.Type)),
                Expression.Call(importer, nameof(NpgsqlBinaryImporter.WriteNull), null),
                written
            );
    }
}
