using Microsoft.EntityFrameworkCore;
using Spectre.Console;
using Traceability.Domain.Records;
using Traceability.Persistence.Book;

namespace Traceability.Web.Hosting.Commands;

/// <summary><c>verify [--serial S]</c>: recomputes the ledger from the tables and the tables from the ledger, and names every row, entry and file that disagrees.</summary>
public static class Verify
{
    /// <summary>0 when everything agrees.</summary>
    public static async Task<int> RunAsync(string[] args)
    {
        if (args is not ([_] or [_, "--serial", _]))
        {
            await Console.Error.WriteLineAsync("usage: verify [--serial S]");
            return 2;
        }

        await using var database = await CommandDatabase.OpenAsync();
        var audit = new LedgerAudit(database.Db);
        if (args.ElementAtOrDefault(2)?.ToUpperInvariant() is { } serial)
        {
            var part = await database.Db.Set<Part>().Where(p => p.Serial == serial).Select(p => p.Id).FirstOrDefaultAsync();
            if (part == default)
            {
                await Console.Error.WriteLineAsync($"there is no part {serial}");
                return 1;
            }

            return await TellAsync(1, await audit.CheckPartAsync(part, CancellationToken.None));
        }

        var (chains, findings) = await AnsiConsole.Progress().StartAsync(context =>
        {
            var bar = context.AddTask("checking chains");
            return audit.CheckAllAsync(new Progress<(int Done, int All)>(p => bar.Value = 100.0 * p.Done / Math.Max(1, p.All)), CancellationToken.None);
        });
        return await TellAsync(chains, findings);
    }

    private static async Task<int> TellAsync(int chains, IReadOnlyList<AuditFinding> findings)
    {
        foreach (var finding in findings)
        {
            await Console.Error.WriteLineAsync(finding.ToString());
        }

        Console.WriteLine($"{chains} chains with their rows and files checked, {findings.Count} disagreements");
        return findings.Count == 0 ? 0 : 1;
    }
}
