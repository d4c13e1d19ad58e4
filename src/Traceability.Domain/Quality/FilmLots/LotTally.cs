using System.Runtime.InteropServices;

namespace Traceability.Domain.Quality.FilmLots;

/// <summary>The running counts of one lot, or of all.</summary>
internal sealed class LotTally
{
    public int Started { get; private set; }

    public int InWork { get; private set; }

    public int PassedFirst { get; private set; }

    public int PassedAfterRework { get; private set; }

    public int Failed { get; private set; }

    public DateTimeOffset? LastFailure { get; private set; }

    public Dictionary<string, int> FailedByStage { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, (int Failed, int Passed)> ByStratum { get; } = new(StringComparer.Ordinal);

    public void Add(LotFate fate)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(fate.Parts);
        Started += fate.Parts;
        if (fate.Parts == 0)
        {
            // An empty row must not make a stratum or a stage appear.
            return;
        }

        if (fate.IsInWork)
        {
            InWork += fate.Parts;
            return;
        }

        ref (int Failed, int Passed) stratum = ref CollectionsMarshal.GetValueRefOrAddDefault(ByStratum, fate.Stratum, out _);
        if (fate.FirstFailedAt is not { } stage)
        {
            PassedFirst += fate.Parts;
            stratum.Passed += fate.Parts;
            return;
        }

        Failed += fate.Parts;
        LastFailure = LastFailure > fate.LastFailure ? LastFailure : fate.LastFailure ?? LastFailure;
        stratum.Failed += fate.Parts;
        PassedAfterRework += fate.Passed ? fate.Parts : 0;
        CollectionsMarshal.GetValueRefOrAddDefault(FailedByStage, stage, out _) += fate.Parts;
    }
}
