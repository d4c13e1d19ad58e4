using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.Extensions.DependencyInjection;
using Traceability.Persistence.Model;

namespace Traceability.Web.Tests.Storage;

[Trait("Category", "Storage")]
public sealed class ModelTests(Workshop workshop) : IClassFixture<Workshop>
{
    [Fact]
    public void No_change_of_the_model_lacks_its_migration()
    {
        using var scope = workshop.Services.CreateScope();
        Assert.False(scope.ServiceProvider.GetRequiredService<WorkshopContext>().Database.HasPendingModelChanges());
    }

    [Fact]
    public async Task The_model_and_the_tables_name_the_same_columns()
    {
        await using var scope = workshop.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<WorkshopContext>();
        var model = db.Model.GetEntityTypes().SelectMany(Columns).Order(StringComparer.Ordinal).ToList();
        var tables = await db
            .Database.SqlQuery<string>(
                $"""
                select table_name || '.' || column_name || case is_nullable when 'YES' then '?' else '' end as "Value"
                from information_schema.columns where table_schema = 'public' and table_name <> '__EFMigrationsHistory'
                """
            )
            .ToListAsync();
        Assert.Equal(model, tables.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_kind_of_fact_has_its_table() =>
        Assert.Equal(
            typeof(Domain.Records.Fact)
                .Assembly.GetTypes()
                .Where(t => t.IsSubclassOf(typeof(Domain.Records.Fact)) && !t.IsAbstract)
                .Select(t => t.Name)
                .Order(),
            FactTables.All.Select(t => t.Type.Name).Order()
        );

    private static IEnumerable<string> Columns(IEntityType type)
    {
        var table = StoreObjectIdentifier.Create(type, StoreObjectType.Table)!.Value;
        return type.GetProperties().Select(p => $"{table.Name}.{p.GetColumnName(table)}{(p.IsColumnNullable(table) ? "?" : "")}");
    }
}
