using System.Globalization;
using System.Runtime.Versioning;
using Traceability.Benchmarks;

[assembly: SupportedOSPlatform("linux")]

return args switch
{
    [] or ["records"] => await RecordsBenchmark.RunAsync(),
    ["start"] => await StartBenchmark.RunAsync(),
    ["stages"] => StagesBenchmark.Run(),
    ["simulate"] => SimulationStudy.Run(),
    ["fill", var units] => await FillBenchmark.RunAsync(int.Parse(units, CultureInfo.InvariantCulture), null),
    ["fill", var units, var folder] => await FillBenchmark.RunAsync(int.Parse(units, CultureInfo.InvariantCulture), folder),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("usage: Traceability.Benchmarks [records | start | stages | simulate | fill UNITS [FOLDER]]");
    return 2;
}
