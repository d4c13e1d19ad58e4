using CsCheck;
using Traceability.Domain.Quality.Sampling;
using static Traceability.Domain.Tests.Sources.Nearness;

namespace Traceability.Domain.Tests.Quality.Sampling;

public class OperatingCharacteristicTests
{
    [Fact]
    public void Worse_quality_is_accepted_less_often_and_more_allowed_faults_more_often() =>
        Gen.Select(Gen.Int[12, 200], Gen.Int[0, 10], Gen.Double[0.001, 0.5], Gen.Double[0.001, 0.4])
            .Sample(
                (n, accept, p, more) =>
                {
                    Assert.True(
                        OperatingCharacteristic.OfProcess(n, accept, p + more) <= OperatingCharacteristic.OfProcess(n, accept, p) + 1e-12
                    );
                    Assert.True(
                        OperatingCharacteristic.OfProcess(n, accept + 1, p) >= OperatingCharacteristic.OfProcess(n, accept, p) - 1e-12
                    );
                }
            );

    [Fact]
    public void A_lot_inspected_whole_is_accepted_or_not_without_chance()
    {
        Assert.Equal(1, OperatingCharacteristic.OfLot(20, 1, 20, 1), 1e-12);
        Assert.Equal(0, OperatingCharacteristic.OfLot(20, 2, 20, 1), 1e-12);
    }

    /// <summary>Ten items, three nonconforming, four drawn, none allowed: C(7,4)/C(10,4) = 35/210.</summary>
    [Fact]
    public void A_small_lot_follows_the_urn() => Assert.Equal(35.0 / 210, OperatingCharacteristic.OfLot(10, 3, 4, 0), 1e-12);

    /// <summary>
    /// Exact sums of C(D, x) C(N - D, n - x) / C(N, n) in whole numbers (Python's integers, 29 Nov 2026); letters L to Q of ISO 2859-1, and
    /// beyond.
    /// </summary>
    [Theory]
    [InlineData(10_000, 100, 200, 5, 0.9850328829968767)]
    [InlineData(10_000, 100, 200, 0, 0.13127761744536193)]
    [InlineData(3_201, 32, 200, 5, 0.9872667569366701)]
    [InlineData(35_001, 700, 315, 10, 0.9464068950245921)]
    [InlineData(150_000, 1_500, 500, 14, 0.9998007511585604)]
    [InlineData(500_001, 5_000, 1_250, 21, 0.9910161617774949)]
    [InlineData(1_000_000, 10_000, 800, 3, 0.04160845564250086)]
    [InlineData(10_000, 9_900, 200, 190, 2.9622843461300003e-05)]
    public void An_ordinary_lot_is_accepted_as_often_as_the_urn_says(
        int lot,
        int nonconforming,
        int sample,
        int accept,
        double probability
    ) => Near(probability, OperatingCharacteristic.OfLot(lot, nonconforming, sample, accept), 1e-8);

    [Fact]
    public void The_quality_of_a_probability_has_that_probability() =>
        Gen.Select(Gen.Int[3, 300], Gen.Int[0, 2], Gen.Double[0.01, 0.99])
            .Sample(
                (n, accept, probability) =>
                    Assert.Equal(
                        probability,
                        OperatingCharacteristic.OfProcess(n, accept, OperatingCharacteristic.QualityAt(n, accept, probability)),
                        1e-8
                    )
            );
}
