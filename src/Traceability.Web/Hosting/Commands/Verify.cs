using Microsoft.EntityFrameworkCore;
using Spectre.Console;
using Traceability.Domain.Records;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;

namespace Traceability.Web.Hosting.Commands;

/// <summary><c>verify [--serial S]</c>: recomputes the ledger from the tables and names the first row that disagrees.</summary>
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
        var serial = args.ElementAtOrDefault(2)?.ToUpperInvariant();
        var subjects = serial is not null ? await database.Db.Set<Part>().Where(p => p.Serial == serial).Select(p => p.Id).ToListAsync()
            : await database.Db.Set<LedgerHead>().Select(h => h.SubjectId).Union(database.Db.Set<Part>().Select(p => p.Id)).OrderBy(id => id).ToListAsync();
        if (serial is not null && subjects.Count == 0)
        {
            await Console.Error.WriteLineAsync($"there is no part {serial}");
            return 1;
        }

        var audit = new LedgerAudit(database.Db);
        var findings = await AnsiConsole.Progress().StartAsync(async context =>
        {
            var bar = context.AddTask("checking chains", maxValue: Math.Max(1, subjects.Count));
            var found = new List<AuditFinding>();
            foreach (var subject in subjects)
            {
                if (await audit.CheckAsync(subject, CancellationToken.None) is { } finding)
                {
                    found.Add(finding);
                }

                bar.Increment(1);
            }

            return found;
        });
        foreach (var finding in findings)
        {
            await Console.Error.WriteLineAsync($"subject {finding.SubjectId}, entry {finding.Sequence}: {finding.Problem}");
        }

        Console.WriteLine($"{subjects.Count} chains checked, {findings.Count} disagree");
        return findings.Count == 0 ? 0 : 1;
    }
}
