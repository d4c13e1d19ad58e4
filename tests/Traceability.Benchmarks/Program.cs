using System.Runtime.Versioning;
using Traceability.Benchmarks;

[assembly: SupportedOSPlatform("linux")]

return args switch
{
    [] or ["records"] => await RecordsBenchmark.RunAsync(),
    ["start"] => await StartBenchmark.RunAsync(),
    ["stages"] => StagesBenchmark.Run(),
    ["simulate"] => SimulationStudy.Run(),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("usage: Traceability.Benchmarks [records | start | stages | simulate]");
    return 2;
}
