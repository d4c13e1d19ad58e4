using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Persistence.Model;

/// <summary>The workshop's tables: facts (insert-only), what is derived from them, and what keeps the service running.</summary>
public sealed class WorkshopContext(DbContextOptions<WorkshopContext> options) : DbContext(options), IDataProtectionKeyContext
{
    /// <summary>Keys that protect cookies and forms, shared by all instances of the service.</summary>
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        configurationBuilder.Properties<Verdict>().HaveConversion<string>();
        configurationBuilder.Properties<LotState>().HaveConversion<string>();
        configurationBuilder.Properties<ReadingSource>().HaveConversion<string>();
        configurationBuilder.Properties<DispositionKind>().HaveConversion<string>();
        configurationBuilder.Properties<DoubtDecisionKind>().HaveConversion<string>();
        configurationBuilder.Properties<ReturnOutcomeKind>().HaveConversion<string>();
        configurationBuilder.Properties<RouteEndingKind>().HaveConversion<string>();
        configurationBuilder.Properties<Role>().HaveConversion<string>();
        configurationBuilder.Properties<NamesOnCertificates>().HaveConversion<string>();
        configurationBuilder.Properties<DayStyle>().HaveConversion<string>();
        configurationBuilder.Properties<SetupSort>().HaveConversion<string>();
        configurationBuilder.Properties<SetupState>().HaveConversion<string>();
        configurationBuilder.Properties<KindOf>().HaveConversion<string>();
    }

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        FactTables.Configure(modelBuilder);
        DerivedTables.Configure(modelBuilder);
        VerdictTables.Configure(modelBuilder);
        FilmTables.Configure(modelBuilder);
        OperatingTables.Configure(modelBuilder);
    }
}
