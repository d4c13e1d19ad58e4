namespace Traceability.Domain.Gates.Rules;

/// <summary>
/// A moment that lies so long after an earlier stage closed, or after the last reading of its log inside tolerance: where a wait ends or a
/// window closes.
/// </summary>
/// <param name="Stage">Code of the earlier stage.</param>
/// <param name="Minutes">How long after it.</param>
/// <param name="ByLog">True when the log of the earlier stage says from when the time counts.</param>
/// <param name="At">The moment.</param>
internal sealed record TimeAfterStage(string Stage, int Minutes, bool ByLog, DateTimeOffset At)
{
    /// <summary>The moments of those earlier stages whose pass counts.</summary>
    public static IReadOnlyList<TimeAfterStage> Of(GateQuestion q, IEnumerable<(string Stage, int Minutes)> limits) =>
        [
            .. from limit in limits
            let pass = q.Dossier.CountingPass(limit.Stage)
            where pass is not null
            select new TimeAfterStage(
                limit.Stage,
                limit.Minutes,
                pass.Ending!.CountsFrom is not null,
                pass.CountsFrom!.Value.AddMinutes(limit.Minutes)
            ),
        ];
}
