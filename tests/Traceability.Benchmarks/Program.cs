using System.Globalization;
using System.Runtime.Versioning;
using Traceability.Benchmarks;

[assembly: SupportedOSPlatform("linux")]

return args switch
{
    [] or ["records"] => await RecordsBenchmark.RunAsync(null),
    ["records", var folder] => await RecordsBenchmark.RunAsync(folder),
    ["start"] => await StartBenchmark.RunAsync(),
    ["stages"] => StagesBenchmark.Run(),
    ["simulate"] => SimulationStudy.Run(),
    ["fill", var units] => await FillBenchmark.RunAsync(int.Parse(units, CultureInfo.InvariantCulture), null),
    ["fill", var units, var folder] => await FillBenchmark.RunAsync(int.Parse(units, CultureInfo.InvariantCulture), folder),
    ["scale", .. var sizes] => await ScaleBenchmark.RunAsync(sizes is [] ? ["10000", "100000", "1000000"] : sizes),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine(
        "usage: Traceability.Benchmarks [records [FOLDER] | start | stages | simulate | fill UNITS [FOLDER] | scale [UNITS or FOLDER ...]]"
    );
    return 2;
}
