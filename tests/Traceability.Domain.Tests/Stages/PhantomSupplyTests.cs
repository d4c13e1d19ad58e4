using CsCheck;
using Traceability.Domain.Stages.BoardSet;

namespace Traceability.Domain.Tests.Stages;

public class PhantomSupplyTests
{
    [Fact]
    public void Current_and_terminal_voltage_are_each_others_inverse() =>
        Gen.Double[0, 0.014]
            .Sample(current => Assert.Equal(current, PhantomSupply.P48.CurrentA(PhantomSupply.P48.TerminalV(current), 48), 1e-12));

    [Fact]
    public void The_greatest_power_is_taken_at_half_the_voltage()
    {
        var half = PhantomSupply.P48.ShortCircuitA(48) / 2;
        Assert.Equal(PhantomSupply.P48.GreatestPowerW, half * PhantomSupply.P48.TerminalV(half), 1e-12);
    }

    [Fact]
    public void More_than_the_greatest_current_is_not_allowed()
    {
        Assert.True(PhantomSupply.P48.Allows(0.010));
        Assert.False(PhantomSupply.P48.Allows(0.0101));
        Assert.Throws<ArgumentOutOfRangeException>(() => PhantomSupply.P48.TerminalV(0.02));
        Assert.Throws<ArgumentOutOfRangeException>(() => PhantomSupply.P48.CurrentA(50, 48));
    }
}
