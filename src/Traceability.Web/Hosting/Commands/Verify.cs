using System.CommandLine;
using Microsoft.EntityFrameworkCore;
using Spectre.Console;
using Traceability.Domain.Records;
using Traceability.Persistence.Book;

namespace Traceability.Web.Hosting.Commands;

/// <summary>
/// <c>verify [--serial S]</c>: recomputes the ledger from the tables and the tables from the ledger, and names every row, entry and file
/// that disagrees.
/// </summary>
public static class Verify
{
    public static Command Command()
    {
        var serial = new Option<string>("--serial") { Description = "Look at this part alone.", HelpName = "SERIAL" };
        var command = new Command("verify", "Compute the ledger again from the tables and name every row, entry and file that disagrees.")
        {
            serial,
        };
        command.SetAction(asked => RunAsync(asked.GetValue(serial)?.ToUpperInvariant()));
        return command;
    }

    /// <summary>0 when everything agrees.</summary>
    private static async Task<int> RunAsync(string? serial)
    {
        await using var database = await CommandDatabase.OpenAsync();
        var audit = new LedgerAudit(database.Db);
        if (serial is not null)
        {
            var part = await database.Db.Set<Part>().Where(p => p.Serial == serial).Select(p => p.Id).FirstOrDefaultAsync();
            if (part == default)
            {
                await Console.Error.WriteLineAsync($"there is no part {serial}");
                return 1;
            }

            return await TellAsync(1, await audit.CheckPartAsync(part, CancellationToken.None));
        }

        var (chains, findings) = await AnsiConsole
            .Progress()
            .StartAsync(context =>
            {
                var bar = context.AddTask("checking chains");
                return audit.CheckAllAsync(
                    new Progress<(int Done, int All)>(p => bar.Value = 100.0 * p.Done / Math.Max(1, p.All)),
                    CancellationToken.None
                );
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
