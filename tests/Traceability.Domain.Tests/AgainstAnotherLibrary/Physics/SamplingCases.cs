using Traceability.Domain.Quality.Sampling;
using Traceability.Domain.Stages.BoardSet;
using Traceability.Domain.Tests.Sources;

namespace Traceability.Domain.Tests.AgainstAnotherLibrary.Physics;

/// <summary>F13 (sampling).</summary>
internal static class SamplingCases
{
    public static object? Compute(ExpectedValue v) =>
        (v.Formula, v.Name) switch
        {
            ("F13", "OC: P(accept)=pbinom(Ac,n,p)") => OperatingCharacteristic.OfProcess(v.Whole("n"), v.Whole("Ac"), v["p"]),
            ("F13", var name) when name.StartsWith("OC n=", StringComparison.Ordinal) => new[]
            {
                OperatingCharacteristic.QualityAt(v.Whole("n"), 0, 0.95),
                OperatingCharacteristic.QualityAt(v.Whole("n"), 0, 0.10),
            },
            ("F13", var name) when name.StartsWith("code letter", StringComparison.Ordinal) => LetterOf(v.Numbers("lot")),
            ("F13", _) => SamplingPlan.ForLetter(v.Inputs.GetProperty("letter").GetString()![0], v["AQL"]) is var plan
                ? new object[] { plan.SampleSize, plan.Accept, plan.Reject }
                : null,
            _ => null,
        };

    private static object[] LetterOf(double[] lot)
    {
        var letter = SamplingPlan.CodeLetter((int)lot[0]);
        Assert.Equal(letter, SamplingPlan.CodeLetter((int)lot[1]));
        return [letter.ToString(), SamplingPlan.SampleSizeOf(letter)];
    }
}
