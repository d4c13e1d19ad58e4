using Traceability.Domain.Quality;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>What the last parts would have come to under the limits of a draft; nothing is recorded.</summary>
public sealed class TryLimits(LastValuesQuery values)
{
    /// <summary>How many of the last verdicts of a stage are looked at.</summary>
    public const int Parts = 50;

    /// <summary>Every stage of the draft that has values, in order.</summary>
    public async Task<IReadOnlyList<LimitTrial>> RunAsync(Domain.Routes.Route draft, CancellationToken cancellation)
    {
        var byStage = (await values.FindAsync(draft.Model, draft.Kind, Parts, cancellation)).ToLookup(v => v.Stage);
        return
        [
            .. draft
                .Stages.Select(s =>
                    LimitTrial.Of(
                        s,
                        [.. byStage[s.Code].Select(v => new TriedValue(v.Attempt, v.Serial, v.Characteristic, v.Value, v.Met))]
                    )
                )
                .Where(t => t.Attempts > 0),
        ];
    }
}
