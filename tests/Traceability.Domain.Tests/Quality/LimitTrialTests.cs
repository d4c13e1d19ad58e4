using Traceability.Domain.Quality;
using Traceability.Domain.Routes;

namespace Traceability.Domain.Tests.Quality;

public class LimitTrialTests
{
    private static readonly Guid A = Guid.NewGuid();
    private static readonly Guid B = Guid.NewGuid();

    private static readonly Stage Stage = new("look", "Look", "entered-limits")
    {
        Characteristics =
        [
            new("gapUm", "Gap", "um", null, 49, 60, null, true, false),
            new("faults", "Faults", "count", null, null, 3, null, true, false),
        ],
    };

    private static readonly TriedValue[] Values =
    [
        new(A, "C-1", "gapUm", 61, true),
        new(A, "C-1", "faults", 1, true),
        new(B, "C-2", "gapUm", 60, true),
        new(B, "C-2", "faults", 3, false),
        new(B, "C-2", "forgotten", 9, false),
    ];

    [Fact]
    public void Of_every_characteristic_those_are_named_that_would_have_come_out_otherwise()
    {
        var trial = LimitTrial.Of(Stage, Values);
        Assert.Equal(["C-1"], trial.Characteristics[0].WouldFail);
        Assert.Equal(["C-2"], trial.Characteristics[1].WouldPass);
        Assert.Equal((2, 2, 1), (trial.Characteristics[0].Values, trial.Characteristics[0].MetThen, trial.Characteristics[0].MetNow));
    }

    [Fact]
    public void An_attempt_meets_the_limits_when_every_value_of_it_does_and_what_the_stage_no_longer_has_is_not_judged()
    {
        var trial = LimitTrial.Of(Stage, Values);
        Assert.Equal((2, 1, 1), (trial.Attempts, trial.AllMetThen, trial.AllMetNow));
    }

    [Fact]
    public void Without_values_nothing_differs() => Assert.False(LimitTrial.Of(Stage, []).Differs);
}
