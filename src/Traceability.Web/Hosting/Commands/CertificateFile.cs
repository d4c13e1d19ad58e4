using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Web.Hosting.Commands;

/// <summary><c>certificate SERIAL</c>: writes the latest certificate, as it was issued, into the current folder.</summary>
public static class CertificateFile
{
    /// <summary>0 when the file was written.</summary>
    public static async Task<int> RunAsync(string[] args)
    {
        if (args is not [_, { Length: > 0 } named])
        {
            await Console.Error.WriteLineAsync("usage: certificate SERIAL");
            return 2;
        }

        var serial = named.ToUpperInvariant();
        await using var database = await CommandDatabase.OpenAsync();
        var latest = await database.Db.Set<Certificate>()
            .Join(database.Db.Set<Part>().Where(p => p.Serial == serial), c => c.PartId, p => p.Id, (c, _) => c)
            .OrderByDescending(c => c.Revision).FirstOrDefaultAsync();
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
