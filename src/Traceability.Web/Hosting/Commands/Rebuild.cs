using System.CommandLine;
using Spectre.Console;
using Traceability.Persistence.Book;

namespace Traceability.Web.Hosting.Commands;

/// <summary>
/// <c>rebuild [--check]</c>: recomputes what is derived from the facts, and judges every attempt again from its evidence; with
/// <c>--check</c> it only says where the tables disagree. Stored readings are facts and are never mended.
/// </summary>
public static class Rebuild
{
    public static Command Command()
    {
        var check = new Option<bool>("--check") { Description = "Only say where the tables disagree with the facts; change nothing." };
        var command = new Command(
            "rebuild",
            "Compute again what is derived from the facts, and judge every attempt again from its evidence."
        )
        {
            check,
        };
        command.SetAction(asked => RunAsync(asked.GetValue(check)));
        return command;
    }

    /// <summary>0 when nothing disagreed, or when everything was brought into line.</summary>
    private static async Task<int> RunAsync(bool check)
    {
        await using var database = await CommandDatabase.OpenAsync();
        var differences = await AnsiConsole
            .Progress()
            .StartAsync(context =>
            {
                var bar = context.AddTask("recomputing parts");
                var progress = new Progress<(int Done, int All)>(p => bar.Value = 100.0 * p.Done / Math.Max(1, p.All));
                return new DerivedState(database.Db, database.Dossiers).CompareAsync(!check, progress, CancellationToken.None);
            });
        var recomputed = await AnsiConsole
            .Progress()
            .StartAsync(context =>
            {
                var bar = context.AddTask("judging attempts again");
                var progress = new Progress<(int Done, int All)>(p => bar.Value = 100.0 * p.Done / Math.Max(1, p.All));
                return new Recomputation(database.Db, database.Dossiers).RunAsync(progress, CancellationToken.None);
            });
        foreach (var difference in differences.Concat(recomputed.Differences))
        {
            Console.WriteLine(difference);
        }

        Console.WriteLine(
            $"derived tables: {differences.Count}"
                + $" differences{(check || differences.Count == 0 ? "" : ", brought into line with the facts")}"
        );
        Console.WriteLine(
            $"computed readings: {recomputed.Judged} attempts judged again, {recomputed.Differences.Count} differences;"
                + $" {recomputed.OlderMethod} by a method of another version, left alone"
        );
        return recomputed.Differences.Count > 0 || (check && differences.Count > 0) ? 1 : 0;
    }
}
