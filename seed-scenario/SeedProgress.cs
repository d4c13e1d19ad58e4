namespace Traceability.SeedScenario;

/// <summary>How far the loading has come.</summary>
/// <param name="Doing">What is being entered, for people.</param>
/// <param name="Done">Steps done.</param>
/// <param name="Total">Steps in all.</param>
public sealed record SeedProgress(string Doing, int Done, int Total);

/// <summary>Counts steps from several tasks at once.</summary>
internal sealed class StepCounter(IProgress<SeedProgress>? progress, int total)
{
    private int done;

    public void Step(string doing) => progress?.Report(new(doing, Math.Min(Interlocked.Increment(ref done), total), total));
}
