using System.Diagnostics;
using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using Traceability.Migrations;
using Traceability.Persistence.Book;
using Traceability.Persistence.Embedded;
using Traceability.Persistence.Model;

namespace Traceability.Benchmarks;

/// <summary>
/// Fills a fresh private database with finished units straight into the tables, past the service but by its rules, and prints the rate. A
/// sample of the parts is verified afterwards, and a small filling compared with what its facts lead to.
/// </summary>
internal static class FillBenchmark
{
    private const int UnitsAtOnce = 1000;
    private const int CompareUpTo = 2000;

    public static async Task<int> RunAsync(int units, string? folder)
    {
        var temporary = folder is null ? Folder() : null;
        try
        {
            await FillAsync(new(units), folder ?? temporary!);
            return await ChecksAsync(units, folder ?? temporary!);
        }
        finally
        {
            if (temporary is not null)
            {
                Directory.Delete(temporary, true);
            }
        }
    }

    /// <summary>A folder for a database, which the database's user may enter.</summary>
    public static string Folder()
    {
        var folder = Directory.CreateTempSubdirectory("traceability-bench-");
        File.SetUnixFileMode(folder.FullName, (UnixFileMode)0b111_101_101);
        return folder.FullName;
    }

    public static async Task FillAsync(FillSize size, string folder)
    {
        await using var server = await EmbeddedPostgres.StartAsync(new(folder), NullLogger.Instance);
        await using var db = new WorkshopContext(
            WorkshopOptions.For(
                new NpgsqlConnectionStringBuilder(server.ConnectionString)
                {
                    MaxAutoPrepare = 50,
                    AutoPrepareMinUsages = 2,
                }.ConnectionString
            )
        );
        await db.Database.MigrateAsync();
        var ids = new OrderedIds();
        var workshop = new FilledWorkshop(ids);
        await workshop.SaveAsync(db);
        await using var connection = new NpgsqlConnection(server.ConnectionString);
        await connection.OpenAsync();
        var indexes = await FillIndexes.DropAsync(connection);
        var watch = Stopwatch.StartNew();
        var rows = await CopyAsync(connection, db, new(workshop, size, ids), size.Units);
        var copied = watch.Elapsed;
        await indexes.PutBackAsync();
        await FilmFates.FillAsync(db, default);
        await indexes.SettleAsync();
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"filled {size.Units} units, {rows} rows{size.Note}: copied in {copied.TotalSeconds:0} s,"
                    + $" {size.Units / copied.TotalSeconds:0} units/s; with indexes, statistics and the fates of film"
                    + $" {watch.Elapsed.TotalSeconds:0} s, {size.Units / watch.Elapsed.TotalSeconds:0} units/s"
            )
        );
    }

    /// <summary>While some units are copied the next are made.</summary>
    private static async Task<long> CopyAsync(NpgsqlConnection connection, WorkshopContext db, ProductionLine line, int units)
    {
        var tables = db.Model.GetEntityTypes().ToDictionary(e => e.ClrType, e => new Lazy<TableCopy>(() => new TableCopy(e)));
        var rows = 0L;
        var next = Task.Run(() => line.Make(0, Math.Min(UnitsAtOnce, units)));
        for (var first = 0; first < units; first += UnitsAtOnce)
        {
            var made = await next;
            var following = first + UnitsAtOnce;
            next = Task.Run(() => line.Make(following, Math.Clamp(units - following, 0, UnitsAtOnce)));
            foreach (var (type, some) in made.All)
            {
                await tables[type].Value.RunAsync(connection, some);
            }

            rows += made.Count;
            if (first % 50_000 == 0 && first > 0)
            {
                Console.WriteLine($"{first} units");
            }
        }

        await next;
        return rows;
    }

    private static async Task<int> ChecksAsync(int units, string folder)
    {
        var worst = 0;
        // Units 1, 101, 201 ... are told to the ledger at every size.
        foreach (var number in Enumerable.Range(1, 5).Select(i => 1 + (i - 1) * (units / 500 * 100)))
        {
            worst = Math.Max(worst, await ServiceUnderTest.CommandAsync(folder, "verify", "--serial", await SerialAsync(folder, number)));
        }

        return units > CompareUpTo ? worst : Math.Max(worst, await ServiceUnderTest.CommandAsync(folder, "rebuild", "--check"));
    }

    /// <summary>The serial of the unit of that number: the year in it depends on when it was made.</summary>
    private static async Task<string> SerialAsync(string folder, int number)
    {
        await using var server = await EmbeddedPostgres.StartAsync(new(folder), NullLogger.Instance);
        await using var connection = new NpgsqlConnection(server.ConnectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(
            "select serial from parts where kind = 'unit' and serial like '%-' || lpad($1::text, 7, '0')",
            connection
        )
        {
            Parameters = { new() { Value = number } },
        };
        return (string)(await command.ExecuteScalarAsync())!;
    }
}
