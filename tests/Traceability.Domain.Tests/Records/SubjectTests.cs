using Traceability.Domain.Records;

namespace Traceability.Domain.Tests.Records;

/// <summary>Facts about one of several kinds of thing name that one.</summary>
public class SubjectTests
{
    private static readonly Guid It = Guid.NewGuid();

    private static Fitting Fitted(Guid? child, Guid? lot) =>
        new(Guid.NewGuid(), Guid.Empty, Guid.Empty, "front", child, lot, null, Guid.Empty, default, default);

    private static Hold On(Guid? lot, Guid? part, Guid? instrument) =>
        new(Guid.NewGuid(), lot, part, instrument, "odd", Guid.Empty, default, default);

    [Fact]
    public void A_fitting_is_of_its_part_or_of_its_lot()
    {
        Assert.Equal(It, Fitted(It, null).ItemId);
        Assert.Equal(It, Fitted(null, It).ItemId);
        Assert.Throws<InvalidOperationException>(() => Fitted(null, null).ItemId);
    }

    [Fact]
    public void A_hold_is_on_its_lot_its_part_or_its_instrument()
    {
        Assert.Equal(It, On(It, null, null).SubjectId);
        Assert.Equal(It, On(null, It, null).SubjectId);
        Assert.Equal(It, On(null, null, It).SubjectId);
        Assert.Throws<InvalidOperationException>(() => On(null, null, null).SubjectId);
    }

    [Fact]
    public void Constants_of_a_calibration_that_may_be_negative_are_among_the_known_ones()
    {
        Assert.Equal(8, CalibrationConstants.All.Count);
        Assert.Equal(2, CalibrationConstants.OfEitherSign.Count);
        Assert.Subset(CalibrationConstants.All.Keys.ToHashSet(), CalibrationConstants.OfEitherSign.ToHashSet());
    }
}
