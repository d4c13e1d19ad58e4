using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Traceability.Migrations;
using Traceability.Persistence.Model;

namespace Traceability.Web.Tests.Hosting;

/// <summary>The compiled model is written by a tool and must be written again when a table changes.</summary>
public sealed class CompiledModelTests
{
    [Fact]
    public void The_compiled_model_says_what_the_classes_say()
    {
        using var compiled = new WorkshopContext(WorkshopOptions.For("Host=nowhere"));
        using var built = new WorkshopContext(WorkshopOptions.WithoutCompiledModel());
        Assert.NotSame(built.Model, compiled.Model);
        Assert.Equal(Lines(built.Model), Lines(compiled.Model));
    }

    private static IEnumerable<string> Lines(IModel model) =>
        from type in model.GetEntityTypes().OrderBy(t => t.Name, StringComparer.Ordinal)
        from line in type.GetProperties()
            .Select(Line)
            .Concat(type.GetKeys().Select(k => k.ToString()!))
            .Concat(type.GetForeignKeys().Select(f => f.ToString()!))
            .Concat(type.GetIndexes().Select(i => $"{i} {i.IsUnique}"))
            .Order(StringComparer.Ordinal)
        select $"{type.Name} {type.GetTableName()} {line}";

    private static string Line(IProperty p) =>
        $"{p.Name} {p.ClrType} {p.GetColumnName()} {p.GetColumnType()} {p.IsNullable} {p.ValueGenerated} {p.IsConcurrencyToken}"
        + $" {p.GetMaxLength()} {p.FindTypeMapping()?.Converter?.GetType()}";
}
