using System.CommandLine;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Web.Hosting.Commands;

/// <summary><c>certificate SERIAL</c>: writes the latest certificate, as it was issued, into the current folder.</summary>
public static class CertificateFile
{
    public static Command Command()
    {
        var serial = new Argument<string>("SERIAL") { Description = "Serial of the unit." };
        var command = new Command("certificate", "Write the unit's latest certificate, as it was issued, into the current folder.")
        {
            serial,
        };
        command.SetAction(asked => RunAsync(asked.GetRequiredValue(serial).ToUpperInvariant()));
        return command;
    }

    /// <summary>0 when the file was written.</summary>
    private static async Task<int> RunAsync(string serial)
    {
        await using var database = await CommandDatabase.OpenAsync();
        var latest = await database
            .Db.Set<Certificate>()
            .Join(database.Db.Set<Part>().Where(p => p.Serial == serial), c => c.PartId, p => p.Id, (c, _) => c)
            .OrderByDescending(c => c.Revision)
            .FirstOrDefaultAsync();
        if (latest is null)
        {
            await Console.Error.WriteLineAsync($"no certificate was issued for {serial}");
            return 1;
        }

        var file = $"{serial}-{latest.Revision}.pdf";
        var pdf = await database.Db.Set<StoredFile>().Where(f => f.Sha256 == latest.PdfSha256).Select(f => f.Bytes).SingleAsync();
        await File.WriteAllBytesAsync(file, pdf);
        Console.WriteLine($"{file}: revision {latest.Revision}, issued {latest.OccurredAt:u}");
        return 0;
    }
}
