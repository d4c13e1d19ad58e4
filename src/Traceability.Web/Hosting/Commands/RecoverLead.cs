using System.CommandLine;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Access;
using Traceability.Web.Http;

namespace Traceability.Web.Hosting.Commands;

/// <summary>
/// <c>recover-lead [--badge B]</c>: makes a new one-time link for a workshop lead who can no longer sign in. Whoever may run it has the
/// server; so that it cannot be done unseen, it stands in the ledger, and every page says it to everybody for two weeks.
/// </summary>
public static class RecoverLead
{
    private const string Address = "http://127.0.0.1:5080";

    public static Command Command()
    {
        var badge = new Option<string?>("--badge") { Description = "Badge of the workshop lead; needed when there are several." };
        var command = new Command(
            "recover-lead",
            "Make a one-time link for a workshop lead who can no longer sign in. Every page will say that it was done."
        )
        {
            badge,
        };
        command.SetAction(asked => RunAsync(asked.GetValue(badge)?.Trim().ToUpperInvariant()));
        return command;
    }

    /// <summary>0 when a link was made.</summary>
    private static async Task<int> RunAsync(string? badge)
    {
        await using var database = await CommandDatabase.OpenAsync();
        var db = database.Db;
        var leads = await db.Offered<Person>()
            .AsNoTracking()
            .Where(p =>
                db.Set<RoleGrant>()
                    .Where(g => g.PersonId == p.Id && g.Role == Role.Lead)
                    .OrderByDescending(g => g.RecordedAt)
                    .Select(g => (bool?)g.Given)
                    .FirstOrDefault() == true
            )
            .OrderBy(p => p.Badge)
            .ToListAsync();
        var named = string.Join(", ", leads.Select(p => p.Badge));
        var problem =
            leads.Count == 0 ? "nobody is workshop lead here: start the service, and it prints the link to the first account"
            : badge is null && leads.Count > 1 ? $"there are several workshop leads: say which with --badge ({named})"
            : badge is not null && leads.TrueForAll(p => p.Badge != badge) ? $"{badge} is no workshop lead who can sign in: {named}"
            : null;
        if (problem is not null)
        {
            await Console.Error.WriteLineAsync($"{problem}; nothing was changed");
            return 1;
        }

        var lead = leads.Find(p => badge is null || p.Badge == badge)!;
        var code = OneTimeCode.New();
        var book = new RecordBook(db, database.Dossiers, TimeProvider.System);
        var written = await book.WriteAsync(
            WriteRequest.Unkeyed,
            JsonRules.Options,
            async cancellation =>
            {
                var stamp = new Writes(book, TimeProvider.System, new HttpContextAccessor()).Stamp(Guid.Empty);
                await book.AppendAsync(lead.Id, "recover-lead", [OneTimeCode.Given(code, lead.Id, Recovery.Reason, stamp)], cancellation);
                await PersonSessions.EndAsync(db, lead.Id, cancellation);
                return Answer.CreatedOnce(lead.Badge);
            },
            CancellationToken.None
        );
        return await SayAsync(written.Refusal, lead, code);
    }

    private static async Task<int> SayAsync(Refusal? refusal, Person lead, string code)
    {
        if (refusal is not null)
        {
            await Console.Error.WriteLineAsync(refusal.Message);
            return 1;
        }

        var address = Environment.GetEnvironmentVariable("TRACEABILITY_URL") is { Length: > 0 } set
            ? set.Split(';')[0].TrimEnd('/')
            : Address;
        Console.WriteLine($"The PIN of {lead.Name} ({lead.Badge}) is good no longer. Set a new one within 24 hours, once, at");
        Console.WriteLine($"  {address}/pin?badge={Uri.EscapeDataString(lead.Badge)}&code={code}");
        Console.WriteLine("For two weeks every page says to everybody that this link was made.");
        return 0;
    }
}
