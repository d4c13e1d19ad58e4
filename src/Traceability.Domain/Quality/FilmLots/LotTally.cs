using System.Runtime.InteropServices;

namespace Traceability.Domain.Quality.FilmLots;

/// <summary>The running counts of one lot.</summary>
internal sealed class LotTally
{
    public int Started { get; private set; }

    public int OnItsWay { get; private set; }

    public int Judged { get; private set; }

    public int PassedFirst { get; private set; }

    public int PassedAfterRework { get; private set; }

    public int Failed { get; private set; }

    public DateTimeOffset? LastFailure { get; private set; }

    public Dictionary<string, int> FailedByPlace { get; } = new(StringComparer.Ordinal);

    /// <exception cref="ArgumentOutOfRangeException">The number of parts is negative.</exception>
    public void Add(LotFate fate)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(fate.Parts, nameof(fate));
        Started += fate.Parts;
        Judged += fate.Judged ? fate.Parts : 0;
        LastFailure = LastFailure > fate.LastFailure ? LastFailure : fate.LastFailure ?? LastFailure;
        if (fate.IsOnItsWay)
        {
            OnItsWay += fate.Parts;
        }
        else if (fate.Counts && fate.Parts > 0)
        {
            // What counts with another diaphragm of the lot was started, and is neither on its way nor counted once more.
            Count(fate);
        }
    }

    private void Count(LotFate fate)
    {
        if (fate.FirstFailedAt is not { } place)
        {
            PassedFirst += fate.Parts;
            return;
        }

        Failed += fate.Parts;
        PassedAfterRework += fate.Passed ? fate.Parts : 0;
        CollectionsMarshal.GetValueRefOrAddDefault(FailedByPlace, place, out _) += fate.Parts;
    }
}
