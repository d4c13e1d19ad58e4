using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Web.Features.Shared;

namespace Traceability.Web.Features.Setup.Operating;

/// <summary>What the store is and how much room it takes, asked of the running database and the disk.</summary>
/// <param name="Folder">The data folder.</param>
/// <param name="Room">What is left on its disk.</param>
/// <param name="Server">The address of a server of the workshop's own; null for the private one in the folder.</param>
/// <param name="DatabaseVersion">The version of PostgreSQL.</param>
/// <param name="DatabaseBytes">The size of the database, with everything kept in it.</param>
/// <param name="FinishedUnits">How many units are finished.</param>
/// <param name="Facts">How many commands the ledger holds.</param>
public sealed record StoreState(
    string Folder,
    DiskRoom Room,
    string? Server,
    string DatabaseVersion,
    long DatabaseBytes,
    int FinishedUnits,
    long Facts
)
{
    /// <summary>Below this a database is mostly its own tables.</summary>
    public const int FewUnits = 20;

    /// <summary>What a thousand units take, as far as the units here tell; null for too few.</summary>
    public long? BytesPerThousandUnits => FinishedUnits < FewUnits ? null : DatabaseBytes * 1000 / FinishedUnits;
}

/// <summary>Asks the running database and the disk.</summary>
public sealed class RunningStore(WorkshopContext db, IConfiguration configuration)
{
    public async Task<StoreState> ReadAsync(CancellationToken cancellation)
    {
        var bytes = await db.Database.SqlQuery<long>($"select pg_database_size(current_database()) as \"Value\"").SingleAsync(cancellation);
        var facts = await db.Database.SqlQuery<long>($"select count(*) as \"Value\" from ledger_entries").SingleAsync(cancellation);
        var units = await db.Set<PartStanding>()
            .Where(s => s.Finished)
            .Join(db.Set<Part>().Where(p => p.Kind == PartKinds.Unit), s => s.PartId, p => p.Id, (s, p) => p.Id)
            .CountAsync(cancellation);
        var version = await db
            .Database.SqlQuery<string>($"select current_setting('server_version') as \"Value\"")
            .SingleAsync(cancellation);
        return new(DataFolder.Of(configuration), DiskRoom.Of(configuration), OwnServer(), version, bytes, units, facts);
    }

    private string? OwnServer()
    {
        var given = new DbConnectionStringBuilder { ConnectionString = configuration.GetConnectionString("Traceability") };
        return given.TryGetValue("Host", out var host) || given.TryGetValue("Server", out host) ? (string)host : null;
    }
}
