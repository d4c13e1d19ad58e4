using Traceability.Domain.Evidence;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.AcousticTest.Findings;
using Traceability.Domain.Stages.AcousticTest.Sensitivities;
using Traceability.Domain.Stages.Methods;
using static System.FormattableString;

namespace Traceability.Domain.Stages.AcousticTest.Noise;

/// <summary>
/// Noise as equivalent sound level from a one-third-octave spectrum or from a recording, and the crackles in the recording; each referred
/// to the sensitivity of the pattern in which it was measured.
/// </summary>
/// <remarks>
/// A route says the pattern by names: <c>spectrumNoiseCardioidDba</c> comes from the noise-spectrum whose name ends in <c>-cardioid</c> and
/// from <c>sensitivityCardioidMvPa</c>. Names without a pattern will do where the stage states one sensitivity.
/// </remarks>
internal static class MeasuredNoise
{
    private const string Station = "stationNoiseDba";

    /// <summary>The route's number: threshold of a crackle over the noise floor.</summary>
    public const string TimesFloor = "crackleTimesFloor";

    /// <summary>The route's number: crackles closer than this are one; ms.</summary>
    public const string HoldMs = "crackleHoldMs";

    /// <summary>The route's numbers that it reads.</summary>
    public static readonly IReadOnlyList<MethodParameter> Parameters =
    [
        new(TimesFloor, "", "A crackle is this many times the noise floor; 8 when not stated.") { Lower = 3, Upper = 100 },
        new(HoldMs, "ms", "Crackles closer together than this are one; 5 when not stated.") { MayBeZeroOrBelow = true },
    ];

    /// <summary>The entered characteristics that it looks at.</summary>
    public static readonly IReadOnlyList<string> Reads = [Station];

    /// <summary>What it computes.</summary>
    public static readonly IReadOnlyList<MethodValue> Values =
    [
        new("spectrumNoise{pattern}Dba", "dBA"),
        new("recordedNoise{pattern}Dba", "dBA"),
        new("recordedCrackles{pattern}", "count"),
    ];

    /// <summary>
    /// Crackles are counted per minute, and rare: in less than a minute there may be none by luck (common practice, no source).
    /// </summary>
    private const double LeastSeconds = 60;
    private const int ShortestRecording = 256;
    private const int TimesTold = 20;

    public static string? HowComputed(string characteristic) =>
        NoiseName.Read(characteristic)?.What switch
        {
            NoiseName.FromSpectrum =>
                "20 lg(U_A / (S p0)), dB: U_A = sqrt(sum U_i^2 10^(A_i/10)) over the bands of the spectrum, A_i the A-weighting at the"
                    + " exact mid-band frequency by the analytic formula of IEC 61672-1, S the sensitivity in the same pattern in V/Pa,"
                    + " p0 = 20 µPa. IEC 60268-4, clause 17, from memory.",
            NoiseName.FromRecording =>
                "20 lg(U_A / (S p0)), dB: U_A the A-weighted rms voltage of the recording from 10 Hz to 20 kHz, from its power spectrum"
                    + " (Welch; Hann windows) and the analytic A-weighting of IEC 61672-1, S the sensitivity in the same pattern in"
                    + " V/Pa, p0 = 20 µPa. IEC 60268-4, clause 17, from memory.",
            NoiseName.Crackles =>
                "Crackles per minute: moments of the recording, after a high-pass of 200 Hz and 4th order that takes rumble out,"
                    + " farther from its median than 8 times its noise floor (route number crackleTimesFloor); the floor is 1.4826"
                    + " times the median absolute deviation, which crackles do not raise; moments less than 5 ms apart (crackleHoldMs)"
                    + " are one. Not stated for a recording shorter than 60 s."
                    + " Threshold, hold time, corner and least duration are common practice, no source.",
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

        foreach (var name in NoiseName.AllOf(stage))
        {
            if (name.ProblemWith(stage, MeasuredSensitivity.PatternsOf(stage)) is { } problem)
            {
                yield return problem;
            }
        }
    }

    /// <param name="input">The stage with its files.</param>
    /// <param name="sensitivities">V/Pa by pattern.</param>
    public static IEnumerable<AcousticPart> Of(StageInput input, IReadOnlyDictionary<string, double> sensitivities)
    {
        var names = NoiseName.AllOf(input.Stage).ToList();
        foreach (var name in names.Where(n => n.What == NoiseName.FromSpectrum))
        {
            if (name.FileIn(input) is { } spectrum)
            {
                yield return OfSpectrum(input, name, spectrum, sensitivities);
            }
        }

        // A recording that the route asks nothing of is listened to all the same.
        foreach (var pattern in names.Where(n => n.What != NoiseName.FromSpectrum).Select(n => n.Pattern).DefaultIfEmpty("").Distinct())
        {
            var level = new NoiseName(NoiseName.FromRecording, pattern);
            if (level.FileIn(input) is { } recording)
            {
                yield return OfRecording(input, level, recording, sensitivities);
            }
        }
    }

    private static AcousticPart OfSpectrum(
        StageInput input,
        NoiseName name,
        EvidenceFile file,
        IReadOnlyDictionary<string, double> sensitivities
    )
    {
        var read = NoiseSpectrumFile.Read(file.Bytes);
        return read.IsGood
            ? Level(input, name, file, EquivalentNoise.AWeightedV([.. read.Data.Bands.Select(VoltageOf)]), sensitivities)
            : AcousticPart.Note(AcousticTexts.NoNoiseLevelFrom(file.Name, string.Join("; ", read.Problems)));
    }

    private static BandVoltage VoltageOf(NoiseBand band) => new(band.ExactFrequencyHz, Math.Pow(10, band.LevelDbv / 20));

    private static AcousticPart OfRecording(
        StageInput input,
        NoiseName name,
        EvidenceFile file,
        IReadOnlyDictionary<string, double> sensitivities
    )
    {
        var read = WavRecordingFile.Read(file.Bytes, (double)(file.FullScaleV ?? 0));
        if (!read.IsGood)
        {
            return AcousticPart.Note(AcousticTexts.NothingWasMadeOfTheRecording(file.Name, string.Join("; ", read.Problems)));
        }

        double rate = read.Data.SampleRateHz;
        var volts = read.Data.Volts.Span;
        var counted = CrackleCount.In(volts, rate, (double)(input.Number(TimesFloor) ?? 8), (double)(input.Number(HoldMs) ?? 5));
        var level =
            volts.Length < ShortestRecording ? AcousticPart.Note(AcousticTexts.NoNoiseLevelFromTooFewSamples(file.Name, volts.Length))
            : input.Stage.Characteristic(name.Characteristic) is null ? AcousticPart.Nothing
            : Level(input, name, file, RecordingSpectrum.Of(volts, rate).AWeightedRms(), sensitivities);
        var seconds = read.Data.Duration.TotalSeconds;
        var perMinute =
            counted.Problem is not null || seconds < LeastSeconds
                ? null
                : ComputedValue.Of((name with { What = NoiseName.Crackles }).Characteristic, 60 * counted.Count / seconds, 1, file.Id);
        return new([.. level.Values, perMinute], [.. level.Findings, new(Tell(counted, seconds), false)]);
    }

    private static AcousticPart Level(
        StageInput input,
        NoiseName name,
        EvidenceFile file,
        double noiseV,
        IReadOnlyDictionary<string, double> sensitivities
    )
    {
        if (name.SensitivityIn(sensitivities) is not { } voltPerPascal || noiseV <= 0)
        {
            return AcousticPart.Note(
                AcousticTexts.NoNoiseLevelFrom(
                    file.Name,
                    noiseV <= 0 ? AcousticTexts.ThereIsNoNoiseInIt
                        : name.Pattern.Length == 0 && sensitivities.Count > 1
                            ? AcousticTexts.SeveralSensitivities(string.Join(", ", sensitivities.Keys))
                        : AcousticTexts.SensitivityIsNotKnown
                )
            );
        }

        var whole = EquivalentNoise.LevelDb(noiseV, voltPerPascal);
        if (input.Value(Station) is not { } station)
        {
            return AcousticPart.Of(ComputedValue.Of(name.Characteristic, whole, 1, file.Id));
        }

        var own = BackgroundNoise.Subtract(whole, (double)station);
        return new(
            [ComputedValue.Of(name.Characteristic, own.LevelDb, 1, file.Id)],
            own.IsAtMost
                ? [new(AcousticTexts.StationIsTooLoud(station, BackgroundNoise.LeastDistanceDb, whole), false)]
                : [new(AcousticTexts.StationNoiseWasTakenOff(station, whole), false)]
        );
    }

    private static string Tell(CrackleCount counted, double seconds) =>
        counted switch
        {
            { Problem: { } problem } => AcousticTexts.NoCracklesCounted(problem),
            _ when seconds < LeastSeconds => AfterTheHighPass(AcousticTexts.TooShortForACount(seconds, LeastSeconds, counted.Count)),
            { Count: 0 } => AfterTheHighPass(AcousticTexts.NoCrackle(seconds, 1e6 * counted.Threshold)),
            { Count: 1 } => AfterTheHighPass(AcousticTexts.OneCrackle(seconds, 1e6 * counted.Threshold, TimesOf(counted))),
            { Count: <= TimesTold } => AfterTheHighPass(
                AcousticTexts.Crackles(counted.Count, seconds, 1e6 * counted.Threshold, TimesOf(counted))
            ),
            _ => AfterTheHighPass(AcousticTexts.CracklesAndLater(counted.Count, seconds, 1e6 * counted.Threshold, TimesOf(counted))),
        };

    private static string AfterTheHighPass(string counted) => AcousticTexts.AfterTheHighPass(counted, HighPass.CornerHz);

    private static string TimesOf(CrackleCount counted) =>
        string.Join(", ", counted.TimesS.Take(TimesTold).Select(t => Invariant($"{t:0.000} s")));
}
