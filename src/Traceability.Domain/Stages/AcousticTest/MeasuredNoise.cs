using Traceability.Domain.Evidence;
using Traceability.Domain.Routes;
using static System.FormattableString;

namespace Traceability.Domain.Stages.AcousticTest;

/// <summary>Noise as equivalent sound level from a one-third-octave spectrum or from a recording, and the crackles in the recording.</summary>
internal static class MeasuredNoise
{
    private const string FromSpectrum = "spectrumNoiseDba";
    private const string FromRecording = "recordedNoiseDba";
    private const string Crackles = "recordedCrackles";
    private const string Station = "stationNoiseDba";
    /// <summary>The route's number: threshold of a crackle over the noise floor.</summary>
    public const string TimesFloor = "crackleTimesFloor";

    /// <summary>The route's number: crackles closer than this are one; ms.</summary>
    public const string HoldMs = "crackleHoldMs";
    private const int ShortestRecording = 256;
    private const int TimesTold = 20;

    public static string? HowComputed(string characteristic) => characteristic switch
    {
        FromSpectrum => "20 lg(U_A / (S p0)), dB: U_A = sqrt(sum U_i^2 10^(A_i/10)) over the bands of the spectrum, A_i the A-weighting at the exact mid-band frequency by the analytic formula of IEC 61672-1, S the first sensitivity of this stage in V/Pa, p0 = 20 µPa. IEC 60268-4, clause 17, from memory.",
        FromRecording => "20 lg(U_A / (S p0)), dB: U_A the A-weighted rms voltage of the recording from 10 Hz to 20 kHz, from its power spectrum (Welch; Hann windows) and the analytic A-weighting of IEC 61672-1, S the first sensitivity of this stage in V/Pa, p0 = 20 µPa. IEC 60268-4, clause 17, from memory.",
        Crackles => "Number of moments of the recording farther from its median than 8 times its noise floor (route number crackleTimesFloor); the floor is 1.4826 times the median absolute deviation, which crackles do not raise; moments less than 5 ms apart (crackleHoldMs) are one. Threshold and hold time are common practice, no source.",
        _ => null,
    };

    public static IEnumerable<string> ProblemsWith(Stage stage)
    {
        if (stage.Parameters.Numbers.TryGetValue(TimesFloor, out var times) && times is < 3 or > 100)
        {
            yield return AcousticTexts.CrackleThresholdMustLieBetween(TimesFloor);
        }

        if (stage.Parameters.Numbers.TryGetValue(HoldMs, out var hold) && hold < 0)
        {
            yield return AcousticTexts.MustNotBeNegative(HoldMs);
        }
    }

    public static IEnumerable<AcousticPart> Of(StageInput input, double? sensitivityVPerPa)
    {
        if (input.Evidence.LastOrDefault(e => e.Kind == EvidenceKind.NoiseSpectrum.Code()) is { } spectrum && input.Stage.Characteristic(FromSpectrum) is not null)
        {
            yield return OfSpectrum(input, spectrum, sensitivityVPerPa);
        }

        if (input.Evidence.LastOrDefault(e => e.Kind == EvidenceKind.NoiseRecording.Code()) is { } recording)
        {
            yield return OfRecording(input, recording, sensitivityVPerPa);
        }
    }

    private static AcousticPart OfSpectrum(StageInput input, EvidenceFile file, double? sensitivity)
    {
        var read = NoiseSpectrumFile.Read(file.Bytes);
        return read.IsGood
            ? Level(input, FromSpectrum, file, EquivalentNoise.AWeightedV([.. read.Data.Bands.Select(b => new BandVoltage(b.ExactFrequencyHz, Math.Pow(10, b.LevelDbv / 20)))]), sensitivity)
            : AcousticPart.Note(AcousticTexts.NoNoiseLevelFrom(file.Name, string.Join("; ", read.Problems)));
    }

    private static AcousticPart OfRecording(StageInput input, EvidenceFile file, double? sensitivity)
    {
        var read = WavRecordingFile.Read(file.Bytes, (double)(file.FullScaleV ?? 0));
        if (!read.IsGood)
        {
            return AcousticPart.Note(AcousticTexts.NothingWasMadeOfTheRecording(file.Name, string.Join("; ", read.Problems)));
        }

        double rate = read.Data.SampleRateHz;
        var volts = read.Data.Volts.Span;
        var counted = CrackleCount.In(volts, rate, (double)(input.Number(TimesFloor) ?? 8), (double)(input.Number(HoldMs) ?? 5));
        var level = volts.Length < ShortestRecording
            ? AcousticPart.Note(AcousticTexts.NoNoiseLevelFromTooFewSamples(file.Name, volts.Length))
            : input.Stage.Characteristic(FromRecording) is null ? AcousticPart.Nothing
            : Level(input, FromRecording, file, RecordingSpectrum.Of(volts, rate).AWeightedRms(), sensitivity);
        return new([.. level.Values, counted.Problem is null ? ComputedValue.Of(Crackles, counted.Count, 0, file.Id) : null], [.. level.Findings, new(Tell(counted, read.Data), false)]);
    }

    private static AcousticPart Level(StageInput input, string name, EvidenceFile file, double noiseV, double? sensitivity)
    {
        if (sensitivity is not { } voltPerPascal || noiseV <= 0)
        {
            return AcousticPart.Note(AcousticTexts.NoNoiseLevelFrom(file.Name, sensitivity is null ? AcousticTexts.SensitivityIsNotKnown : AcousticTexts.ThereIsNoNoiseInIt));
        }

        var whole = EquivalentNoise.LevelDb(noiseV, voltPerPascal);
        if (input.Value(Station) is not { } station)
        {
            return AcousticPart.Of(ComputedValue.Of(name, whole, 1, file.Id));
        }

        var own = BackgroundNoise.Subtract(whole, (double)station);
        return new([ComputedValue.Of(name, own.LevelDb, 1, file.Id)], own.IsAtMost
            ? [new(AcousticTexts.StationIsTooLoud(station, BackgroundNoise.LeastDistanceDb, whole), false)]
            : [new(AcousticTexts.StationNoiseWasTakenOff(station, whole), false)]);
    }

    private static string Tell(CrackleCount counted, WavRecording recording) => counted switch
    {
        { Problem: { } problem } => AcousticTexts.NoCracklesCounted(problem),
        { Count: 0 } => AcousticTexts.NoCrackle(recording.Duration.TotalSeconds, 1e6 * counted.Threshold),
        { Count: 1 } => AcousticTexts.OneCrackle(recording.Duration.TotalSeconds, 1e6 * counted.Threshold, TimesOf(counted)),
        { Count: <= TimesTold } => AcousticTexts.Crackles(counted.Count, recording.Duration.TotalSeconds, 1e6 * counted.Threshold, TimesOf(counted)),
        _ => AcousticTexts.CracklesAndLater(counted.Count, recording.Duration.TotalSeconds, 1e6 * counted.Threshold, TimesOf(counted)),
    };

    private static string TimesOf(CrackleCount counted) => string.Join(", ", counted.TimesS.Take(TimesTold).Select(t => Invariant($"{t:0.000} s")));
}
