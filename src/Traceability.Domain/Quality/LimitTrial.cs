using Traceability.Domain.Routes;

namespace Traceability.Domain.Quality;

/// <summary>A value that was judged before, to be tried under other limits.</summary>
/// <param name="Attempt">The attempt in which it was read.</param>
/// <param name="Serial">The part.</param>
/// <param name="Characteristic">Of which characteristic.</param>
/// <param name="Value">The value, in the unit of the characteristic.</param>
/// <param name="Met">True when it met the limits that it was judged by.</param>
public sealed record TriedValue(Guid Attempt, string Serial, string Characteristic, decimal Value, bool Met);

/// <summary>What values of one characteristic would have come to.</summary>
/// <param name="Characteristic">The characteristic with the limits that are tried.</param>
/// <param name="Values">How many there are.</param>
/// <param name="MetThen">How many met the limits that they were judged by.</param>
/// <param name="MetNow">How many meet these.</param>
/// <param name="WouldFail">Serials that met theirs and do not meet these.</param>
/// <param name="WouldPass">Serials that did not meet theirs and meet these.</param>
public sealed record CharacteristicTrial(
    Characteristic Characteristic,
    int Values,
    int MetThen,
    int MetNow,
    IReadOnlyList<string> WouldFail,
    IReadOnlyList<string> WouldPass
);

/// <summary>What the last parts would have come to at one stage under other limits.</summary>
/// <param name="Stage">The stage with the limits that are tried.</param>
/// <param name="Attempts">How many attempts are looked at.</param>
/// <param name="AllMetThen">In how many of them every value met the limits that it was judged by.</param>
/// <param name="AllMetNow">In how many every value meets these.</param>
/// <param name="Characteristics">The characteristics that have values, in the order of the route.</param>
/// <remarks>
/// Only limits are tried: nothing is computed anew, and what a method found beside the limits is left out. A value of a characteristic that
/// the stage no longer has is not judged. No formula; counting. Checks: <c>LimitTrialTests</c>.
/// </remarks>
public sealed record LimitTrial(
    Stage Stage,
    int Attempts,
    int AllMetThen,
    int AllMetNow,
    IReadOnlyList<CharacteristicTrial> Characteristics
)
{
    /// <summary>True when something would have come out otherwise.</summary>
    public bool Differs => Characteristics.Any(c => c.WouldFail.Count + c.WouldPass.Count > 0);

    /// <summary>Tries the limits of a stage on values that were judged there before.</summary>
    public static LimitTrial Of(Stage stage, IReadOnlyList<TriedValue> values)
    {
        ArgumentNullException.ThrowIfNull(stage);
        ArgumentNullException.ThrowIfNull(values);
        var tried = values.Where(v => stage.Characteristic(v.Characteristic) is not null).ToList();
        var attempts = tried.GroupBy(v => v.Attempt).ToList();
        return new(
            stage,
            attempts.Count,
            attempts.Count(a => a.All(v => v.Met)),
            attempts.Count(a => a.All(v => stage.Characteristic(v.Characteristic)!.IsMetBy(v.Value))),
            [
                .. stage
                    .Characteristics.Select(c => (c, Of: tried.Where(v => v.Characteristic == c.Name).ToList()))
                    .Where(x => x.Of.Count > 0)
                    .Select(x => new CharacteristicTrial(
                        x.c,
                        x.Of.Count,
                        x.Of.Count(v => v.Met),
                        x.Of.Count(v => x.c.IsMetBy(v.Value)),
                        [.. x.Of.Where(v => v.Met && !x.c.IsMetBy(v.Value)).Select(v => v.Serial).Distinct()],
                        [.. x.Of.Where(v => !v.Met && x.c.IsMetBy(v.Value)).Select(v => v.Serial).Distinct()]
                    )),
            ]
        );
    }
}
