using Spectre.Console;

namespace Traceability.SeedScenario;

/// <summary>Shows the progress of one part of the scenario as a bar.</summary>
internal sealed class BarProgress(ProgressTask task) : IProgress<SeedProgress>
{
    public void Report(SeedProgress value)
    {
        task.MaxValue = value.Total;
        task.Value = Math.Max(task.Value, value.Done);
    }
}
