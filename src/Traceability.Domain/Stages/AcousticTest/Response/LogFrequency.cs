namespace Traceability.Domain.Stages.AcousticTest.Response;

/// <summary>Straight lines over the logarithm of frequency.</summary>
internal static class LogFrequency
{
    public static double Between(double lowerHz, double atLower, double upperHz, double atUpper, double frequencyHz)
    {
        if (frequencyHz == lowerHz)
            return atLower;
        if (frequencyHz == upperHz)
            return atUpper;
        return atLower + (atUpper - atLower) * (Math.Log(frequencyHz / lowerHz) / Math.Log(upperHz / lowerHz));
    }
}
