using CsCheck;
using Traceability.Domain.Stages.AcousticTest.Response;

namespace Traceability.Domain.Tests.Stages.AcousticTest.Response;

public class ResponseAgainstMaskTests
{
    private static readonly ToleranceMask Mask = new([
        MaskPoint.Symmetric(100, 2),
        MaskPoint.Symmetric(1000, 1),
        MaskPoint.Symmetric(10000, 2),
    ]);
    private static readonly double[] Frequencies = [100, 200, 500, 1000, 2000, 5000, 10000];

    private static ResponseCurve Curve(params double[] levels) => new([.. Frequencies.Zip(levels, (f, l) => new ResponsePoint(f, l))]);

    [Fact]
    public void A_level_response_is_inside_and_closest_where_the_mask_is_narrowest()
    {
        var judged = ResponseAgainstMask.Judge(Curve(-34, -34, -34, -34, -34, -34, -34), Mask);
        Assert.Equal(MaskVerdict.Inside, judged.Verdict);
        Assert.Equal(1, judged.WorstMarginDb);
        Assert.Equal(1000, judged.WorstAtHz);
        Assert.Equal("inside the mask; closest at 1000 Hz with 1.00 dB to spare", judged.Words);
    }

    [Fact]
    public void The_first_frequency_outside_and_the_worst_one_are_named()
    {
        var judged = ResponseAgainstMask.Judge(Curve(0, 0, 1.5, 0, 0, -4, 0), Mask);
        Assert.Equal(MaskVerdict.Outside, judged.Verdict);
        Assert.Equal(500, judged.FirstOutsideHz);
        Assert.Equal(5000, judged.WorstAtHz);
        Assert.Equal("outside the mask from 500 Hz; worst at 5000 Hz: -4.00 dB where -1.70 to +1.70 dB is allowed", judged.Words);
    }

    [Fact]
    public void The_limit_itself_is_inside() =>
        Assert.Equal(MaskVerdict.Inside, ResponseAgainstMask.Judge(Curve(2, 0, 0, 0, 0, 0, -2), Mask).Verdict);

    [Fact]
    public void A_coarse_curve_cannot_step_over_a_corner_of_the_mask()
    {
        ToleranceMask notch = new([MaskPoint.Symmetric(100, 5), MaskPoint.Symmetric(300, 0.5), MaskPoint.Symmetric(10000, 5)]);
        var judged = ResponseAgainstMask.Judge(Curve(2, 2, 2, 0, 0, 0, 0), notch);
        Assert.Equal(300, judged.WorstAtHz);
        Assert.Equal(MaskVerdict.Outside, judged.Verdict);
    }

    [Fact]
    public void The_mask_lies_around_the_reference_curve_of_the_model()
    {
        var model = Curve(-6, -3, 0, 0, 2, 4, -5);
        Assert.Equal(MaskVerdict.Inside, ResponseAgainstMask.Judge(Curve(-40, -37, -34, -34, -32, -30, -39), Mask, model).Verdict);
        Assert.Equal(MaskVerdict.Outside, ResponseAgainstMask.Judge(Curve(0, 0, 0, 0, 0, 0, 0), Mask, model).Verdict);
    }

    [Fact]
    public void A_curve_that_ends_inside_the_mask_gives_no_verdict()
    {
        var shorter = new ResponseCurve([new(200, 0), new(1000, 0), new(10000, 0)]);
        var judged = ResponseAgainstMask.Judge(shorter, Mask);
        Assert.Equal(MaskVerdict.NotShown, judged.Verdict);
        Assert.Equal("the mask asks from 100 Hz on, the response begins at 200 Hz", judged.Words);
    }

    [Fact]
    public void A_curve_that_ends_inside_the_mask_but_is_outside_already_fails() =>
        Assert.Equal(MaskVerdict.Outside, ResponseAgainstMask.Judge(new([new(200, 9), new(1000, 0), new(10000, 0)]), Mask).Verdict);

    [Fact]
    public void Exact_band_frequencies_cover_a_mask_written_with_nominal_ones()
    {
        ToleranceMask nominal = new([MaskPoint.Symmetric(31.5, 3), MaskPoint.Symmetric(16000, 3)]);
        ResponseCurve exact = new([.. Enumerable.Range(-15, 28).Select(x => new ResponsePoint(1000 * Math.Pow(10, x / 10.0), 0))]);
        Assert.Equal(MaskVerdict.Inside, ResponseAgainstMask.Judge(exact, nominal).Verdict);
    }

    [Fact]
    public void Without_a_level_at_the_normalising_frequency_there_is_no_verdict() =>
        Assert.Equal(MaskVerdict.NotShown, ResponseAgainstMask.Judge(new([new(100, 0), new(900, 0)]), Mask).Verdict);

    [Fact]
    public void Adding_a_gain_changes_nothing() =>
        Gen.Select(Gen.Double[-3, 3].Array[7], Gen.Double[-60, 60])
            .Sample(
                (levels, gain) =>
                {
                    var before = ResponseAgainstMask.Judge(Curve(levels), Mask);
                    var after = ResponseAgainstMask.Judge(Curve([.. levels.Select(l => l + gain)]), Mask);
                    Assert.Equal(before.Verdict, after.Verdict);
                    Assert.Equal(before.WorstMarginDb!.Value, after.WorstMarginDb!.Value, 1e-9);
                }
            );

    [Fact]
    public void Moving_a_point_further_out_never_turns_outside_into_inside() =>
        Gen.Select(Gen.Double[-3, 3].Array[7], Gen.Int[0, 6].Where(i => i != 3), Gen.Double[0, 5])
            .Sample(
                (levels, which, further) =>
                {
                    var before = ResponseAgainstMask.Judge(Curve(levels), Mask);
                    var worse = levels.ToArray();
                    worse[which] += further * Math.Sign(levels[which] - levels[3]);
                    var after = ResponseAgainstMask.Judge(Curve(worse), Mask);
                    Assert.True(after.WorstMarginDb <= before.WorstMarginDb + 1e-9);
                    if (before.Verdict is MaskVerdict.Outside)
                        Assert.Equal(MaskVerdict.Outside, after.Verdict);
                }
            );
}
