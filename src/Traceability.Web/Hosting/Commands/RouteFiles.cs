using System.CommandLine;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Routes.Files;
using Traceability.Domain.Stages;
using Traceability.Persistence.Book;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Setup.Routes;
using Traceability.Web.Http;

namespace Traceability.Web.Hosting.Commands;

/// <summary>
/// <c>route check FILE...</c> says what is wrong with route files, line by line; <c>route load FILE...</c> loads them as the next
/// revisions, proposals that somebody other than their author approves in the service.
/// </summary>
public static class RouteFiles
{
    public static Command Command() =>
        new("route", "Check or load route files.")
        {
            Of("check", "Say what is wrong with route files, line by line.", CheckAsync),
            Of(
                "load",
                "Load route files as the next revisions: proposals, to be approved in the service.",
                async files => await CheckAsync(files) && await LoadAsync(files)
            ),
        };

    /// <summary>Exit code 0 when every file is a good route, and was loaded where that was asked for.</summary>
    private static Command Of(string name, string description, Func<string[], Task<bool>> act)
    {
        var files = new Argument<string[]>("FILE") { Description = "Route files.", Arity = ArgumentArity.OneOrMore };
        var command = new Command(name, description) { files };
        command.SetAction(async asked => await act(asked.GetRequiredValue(files)) ? 0 : 1);
        return command;
    }

    private static async Task<bool> CheckAsync(string[] files)
    {
        var good = true;
        foreach (var file in files)
        {
            if (!File.Exists(file))
            {
                await Console.Error.WriteLineAsync($"{file}: there is no such file");
                good = false;
                continue;
            }

            var reading = RouteText.Read(await File.ReadAllTextAsync(file), StageMethods.Requirements);
            good &= reading.Problems.Count == 0;
            Console.WriteLine(
                reading.Route is { } r
                    ? $"{file}: {r.Model}/{r.Kind} revision {r.Revision}, {r.Stages.Count} stages: good"
                    : $"{file}: {reading.Problems.Count} problems"
            );
            foreach (var problem in reading.Problems)
            {
                Console.WriteLine($"  {problem}");
            }
        }

        return good;
    }

    private static async Task<bool> LoadAsync(string[] files)
    {
        await using var database = await CommandDatabase.OpenAsync();
        foreach (var file in files)
        {
            var text = await File.ReadAllTextAsync(file);
            var author = RouteText.Read(text, StageMethods.Requirements).Route!.Author;
            var book = new RecordBook(database.Db, database.Dossiers, TimeProvider.System);
            var use = new LoadRoute(
                database.Db,
                new Writes(book, TimeProvider.System, new HttpContextAccessor()),
                new KnownKindsQuery(database.Db),
                new SharedPrefix(database.Db)
            );
            var by = await database.Db.Set<Person>().Where(p => p.Badge == author).Select(p => p.Id).FirstOrDefaultAsync();
            var answer = await book.WriteAsync(
                WriteRequest.Unkeyed,
                JsonRules.Options,
                c => use.RunAsync(text, by, c),
                CancellationToken.None
            );
            if (answer.Refusal is { } refusal)
            {
                await Console.Error.WriteLineAsync($"{file}: {refusal.Message}");
                return false;
            }

            Console.WriteLine(
                $"{file}: loaded as a proposal; the quality lead or a workshop lead who did not write it approves it under Set-up, Routes"
            );
            foreach (var warning in JsonSerializer.Deserialize<LoadRoute.Output>(answer.Json, JsonRules.Options)!.Warnings)
            {
                Console.WriteLine($"  line {warning.Line}: {warning.Message}");
            }
        }

        return true;
    }
}
