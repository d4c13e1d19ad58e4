using Microsoft.EntityFrameworkCore;
using Traceability.Migrations.Compiled;
using Traceability.Persistence.Model;

namespace Traceability.Migrations;

/// <summary>How the service and its tools reach the database: one place for provider, names and where the migrations are.</summary>
public static class WorkshopOptions
{
    /// <summary>The role under which the service works: it may add facts and never change them.</summary>
    public const string AppRole = "traceability_app";

    /// <summary>The role of those who only read.</summary>
    public const string ReaderRole = "traceability_reader";

    /// <summary>Options for a connection string.</summary>
    public static DbContextOptions<WorkshopContext> For(string connectionString)
    {
        var builder = new DbContextOptionsBuilder<WorkshopContext>();
        Apply(builder, connectionString);
        return builder.Options;
    }

    /// <summary>
    /// Options under which EF Core builds the model itself: for its tools, and to see that the compiled one is up to date.
    /// </summary>
    public static DbContextOptions<WorkshopContext> WithoutCompiledModel()
    {
        var builder = new DbContextOptionsBuilder<WorkshopContext>();
        ApplyProvider(builder, "Host=nowhere");
        return builder.Options;
    }

    /// <summary>Applies them to a builder. The model is the compiled one: see DECISIONS.md for what building it costs a start.</summary>
    public static void Apply(DbContextOptionsBuilder builder, string connectionString)
    {
        ApplyProvider(builder, connectionString);
        builder.UseModel(WorkshopContextModel.Instance);
    }

    private static void ApplyProvider(DbContextOptionsBuilder builder, string connectionString) => builder
        .UseNpgsql(connectionString, npgsql => npgsql.MigrationsAssembly(typeof(WorkshopOptions).Assembly.GetName().Name))
        .UseSnakeCaseNamingConvention();

    /// <summary>The same server, but as the application's role: a session that cannot change a fact even by mistake.</summary>
    public static string AsApp(string connectionString) =>
        new Npgsql.NpgsqlConnectionStringBuilder(connectionString) { Options = $"-c role={AppRole}" }.ConnectionString;
}
