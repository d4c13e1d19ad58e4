using Traceability.Domain.Evidence;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.AcousticTest.Findings;
using Traceability.Domain.Stages.Methods;

namespace Traceability.Domain.Stages.AcousticTest.Noise;

/// <summary>What the name of a noise characteristic says: what is measured, and in which pattern ("" = the name does not say).</summary>
internal sealed record NoiseName(string What, string Pattern)
{
    public const string FromSpectrum = "spectrumNoise";
    public const string FromRecording = "recordedNoise";
    public const string Crackles = "recordedCrackles";
    private const string Level = "Dba";

    /// <summary>The whole name, as a route writes it.</summary>
    public string Characteristic => What == Crackles ? What + Pattern : What + Pattern + Level;

    private string Ending => $"-{Pattern.ToLowerInvariant()}";

    private string Kind => (What == FromSpectrum ? EvidenceKind.NoiseSpectrum : EvidenceKind.NoiseRecording).Code();

    /// <summary>Reads a name; null when it is that of something else.</summary>
    public static NoiseName? Read(string name) =>
        name.StartsWith(Crackles, StringComparison.Ordinal)
            ? new(Crackles, name[Crackles.Length..])
            : LevelIn(name, FromSpectrum) ?? LevelIn(name, FromRecording);

    private static NoiseName? LevelIn(string name, string what) =>
        name.StartsWith(what, StringComparison.Ordinal) && name.EndsWith(Level, StringComparison.Ordinal)
            ? new(what, name[what.Length..^Level.Length])
            : null;

    /// <summary>Those that a stage computes.</summary>
    public static IEnumerable<NoiseName> AllOf(Stage stage) =>
        stage.Characteristics.Where(c => !c.Entered).Select(c => Read(c.Name)).OfType<NoiseName>();

    /// <summary>The latest file of the pattern; a name that says no pattern takes any of the kind.</summary>
    public EvidenceFile? FileIn(StageInput input) =>
        input.Evidence.LastOrDefault(e => e.Kind == Kind && (Pattern.Length == 0 || e.Name.EndsWith(Ending, StringComparison.Ordinal)));

    /// <summary>
    /// The sensitivity to which it is referred, V/Pa: that of its pattern, or the only one there is. Null when there is none, or nothing
    /// says which.
    /// </summary>
    public double? SensitivityIn(IReadOnlyDictionary<string, double> byPattern) =>
        byPattern.TryGetValue(Pattern, out var own) ? own
        : Pattern.Length == 0 && byPattern.Count == 1 ? byPattern.Values.Single()
        : null;

    /// <summary>Why a route cannot ask for it; null when it can.</summary>
    /// <param name="stage">The stage.</param>
    /// <param name="patterns">The patterns of which the stage states a sensitivity.</param>
    public string? ProblemWith(Stage stage, IReadOnlyList<string> patterns)
    {
        if (Pattern.Length == 0)
        {
            var named = patterns.Select(p => (this with { Pattern = p }).Characteristic);
            return What != Crackles && patterns.Count > 1
                ? AcousticTexts.NoiseNamesNoPattern(Characteristic, string.Join(", ", named))
                : null;
        }

        var hasFile = stage.Evidence.Any(e => e.Kind == Kind && e.Name.EndsWith(Ending, StringComparison.Ordinal));
        return What != Crackles && !patterns.Contains(Pattern)
                ? AcousticTexts.IsComputedFromAnother(Characteristic, $"sensitivity{Pattern}MvPa")
            : hasFile ? null
            : AcousticTexts.NoiseHasNoFileOfItsPattern(Characteristic, Kind, Ending);
    }
}
