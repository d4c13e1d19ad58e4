using CsCheck;
using Traceability.Domain.Stages.BoardSet;

namespace Traceability.Domain.Tests.Stages;

public class OperatingCharacteristicTests
{
    [Fact]
    public void Worse_quality_is_accepted_less_often_and_more_allowed_faults_more_often() =>
        Gen.Select(Gen.Int[12, 200], Gen.Int[0, 10], Gen.Double[0.001, 0.5], Gen.Double[0.001, 0.4]).Sample((n, accept, p, more) =>
        {
            Assert.True(OperatingCharacteristic.OfProcess(n, accept, p + more) <= OperatingCharacteristic.OfProcess(n, accept, p) + 1e-12);
            Assert.True(OperatingCharacteristic.OfProcess(n, accept + 1, p) >= OperatingCharacteristic.OfProcess(n, accept, p) - 1e-12);
        });

    [Fact]
    public void A_lot_inspected_whole_is_accepted_or_not_without_chance()
    {
        Assert.Equal(1, OperatingCharacteristic.OfLot(20, 1, 20, 1), 1e-12);
        Assert.Equal(0, OperatingCharacteristic.OfLot(20, 2, 20, 1), 1e-12);
    }

    /// <summary>Ten items, three nonconforming, four drawn, none allowed: C(7,4)/C(10,4) = 35/210.</summary>
    [Fact]
    public void A_small_lot_follows_the_urn() => Assert.Equal(35.0 / 210, OperatingCharacteristic.OfLot(10, 3, 4, 0), 1e-12);

    [Fact]
    public void The_quality_of_a_probability_has_that_probability() =>
        Gen.Select(Gen.Int[3, 300], Gen.Int[0, 2], Gen.Double[0.01, 0.99]).Sample((n, accept, probability) =>
            Assert.Equal(probability, OperatingCharacteristic.OfProcess(n, accept, OperatingCharacteristic.QualityAt(n, accept, probability)), 1e-8));
}
