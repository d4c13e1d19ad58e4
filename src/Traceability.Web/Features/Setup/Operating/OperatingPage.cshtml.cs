using Microsoft.AspNetCore.Authorization;
using Traceability.Domain.Records;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Operating;

/// <summary>Where the data is, how much room is left, and how a copy is made and brought back.</summary>
[Authorize(Roles = nameof(Role.Lead))]
public sealed class OperatingPage(RunningStore store, Writes writes) : DeskPage(writes)
{
    public StoreState Store { get; private set; } = null!;

    public async Task OnGetAsync() => Store = await store.ReadAsync(HttpContext.RequestAborted);

    /// <summary>A copy of the records while the service runs, as it is typed on the machine.</summary>
    public string CopyCommand =>
        Store.Server is { } host
            ? $"pg_dump --format=custom --host={host} --file=$(date +%F).dump DATABASE"
            : $"pg_dump --format=custom --host={Store.Folder}/run --username=traceability_owner --file=$(date +%F).dump traceability";

    /// <summary>Computes the ledger again, after a copy was brought back or whenever somebody wants to know.</summary>
    public string VerifyCommand => $"TRACEABILITY_DATA={Store.Folder} {Environment.ProcessPath} verify";

    /// <summary>The invented workshop in a process and a folder of its own.</summary>
    public string DemonstrationCommand =>
        $"TRACEABILITY_DATA=$HOME/demonstration TRACEABILITY_URL=http://127.0.0.1:5081 {Environment.ProcessPath} serve --demo";
}
