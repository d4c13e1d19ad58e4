using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Web.Tests.Pages;

/// <summary>
/// What the last command on a subject wrote: its kind and the canonical text of its facts, with everything that differs between two
/// runs of the same command (ids, times, the subject's own name) made the same.
/// </summary>
public static partial class LedgerLine
{
    /// <summary>The last command on the part, lot, instrument, person, station or route of that name.</summary>
    public static async Task<string> LastAsync(this Workshop workshop, string subject)
    {
        await using var scope = workshop.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<WorkshopContext>();
        var id = await db.Set<Part>()
            .Where(p => p.Serial == subject)
            .Select(p => p.Id)
            .Concat(db.Set<Lot>().Where(l => l.Number == subject).Select(l => l.Id))
            .Concat(db.Set<Instrument>().Where(i => i.Code == subject).Select(i => i.Id))
            .Concat(db.Set<Person>().Where(p => p.Badge == subject).Select(p => p.Id))
            .Concat(db.Set<Domain.Records.Station>().Where(s => s.Code == subject).Select(s => s.Id))
            .FirstAsync();
        var entry = await db.Set<LedgerEntry>().Where(e => e.SubjectId == id).OrderByDescending(e => e.Sequence).FirstAsync();
        return Times()
            .Replace(Ids().Replace($"{entry.Kind} {entry.Body}", "ID"), "TIME")
            .Replace(subject, "SUBJECT", StringComparison.Ordinal);
    }

    /// <summary>How many commands were written about it.</summary>
    public static async Task<int> CommandsAsync(this Workshop workshop, string serial) =>
        (await workshop.GetAsync($"ledger/{serial}?limit=500")).Expect(200).List().Count;

    [GeneratedRegex("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}")]
    private static partial Regex Ids();

    [GeneratedRegex("[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9:.]+Z")]
    private static partial Regex Times();
}
