using Traceability.Domain.Routes.Files;

namespace Traceability.Web.Hosting.Commands;

/// <summary><c>route check FILE</c>: says what is wrong with a route file, line by line.</summary>
public static class RouteFiles
{
    /// <summary>0 when every file is a good route.</summary>
    public static async Task<int> RunAsync(string[] args)
    {
        if (args is not [_, "check", .. { Length: > 0 } files])
        {
            await Console.Error.WriteLineAsync("usage: route check FILE...; routes are loaded with POST /api/v1/routes or on the set-up page");
            return 2;
        }

        var bad = 0;
        foreach (var file in files)
        {
            if (!File.Exists(file))
            {
                await Console.Error.WriteLineAsync($"{file}: there is no such file");
                bad++;
                continue;
            }

            var reading = RouteText.Read(await File.ReadAllTextAsync(file));
            bad += reading.Problems.Count > 0 ? 1 : 0;
            Console.WriteLine(reading.Route is { } r ? $"{file}: {r.Model}/{r.Kind} revision {r.Revision}, {r.Stages.Count} stages: good" : $"{file}: {reading.Problems.Count} problems");
            foreach (var problem in reading.Problems)
            {
                Console.WriteLine($"  {problem}");
            }
        }

        return bad == 0 ? 0 : 1;
    }
}
