using Microsoft.Extensions.DependencyInjection;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Tests.Storage;

/// <summary>Asks whether ledger, facts and derived tables agree with one another, everywhere.</summary>
internal sealed class HealthCheck(Workshop workshop) : IAsyncDisposable
{
    private readonly AsyncServiceScope scope = workshop.Services.CreateAsyncScope();

    public WorkshopContext Db => scope.ServiceProvider.GetRequiredService<WorkshopContext>();

    public DossierReader Dossiers => scope.ServiceProvider.GetRequiredService<DossierReader>();

    public ValueTask DisposeAsync() => scope.DisposeAsync();

    public async Task PassAsync()
    {
        Assert.Empty(await LedgerAsync());
        Assert.Empty(await DerivedAsync(mend: false));
        Assert.Empty((await RecomputedAsync()).Differences);
    }

    /// <summary>What the ledger says against the tables.</summary>
    public async Task<IReadOnlyList<AuditFinding>> LedgerAsync() => (await new LedgerAudit(Db).CheckAllAsync(null, default)).Findings;

    /// <summary>What judging every attempt again says against the stored readings.</summary>
    public Task<Recomputed> RecomputedAsync() => new Recomputation(Db, Dossiers).RunAsync(null, default);

    /// <summary>What the facts say against the derived tables.</summary>
    public Task<IReadOnlyList<string>> DerivedAsync(bool mend) => new DerivedState(Db, Dossiers).CompareAsync(mend, null, default);
}
