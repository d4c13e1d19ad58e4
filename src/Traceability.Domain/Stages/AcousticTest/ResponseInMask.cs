using System.Globalization;
using Traceability.Domain.Evidence;
using Traceability.Domain.Routes;

namespace Traceability.Domain.Stages.AcousticTest;

/// <summary>
/// Judges measured responses against the route's mask, relative to their own level at 1 kHz. For every masked file gives
/// <c>{name}MarginDb</c>, the smallest distance to the mask (negative outside it), and, where the route asks for it, the
/// front-to-back ratio at 1 kHz from the files <c>front</c> and <c>rear</c>.
/// </summary>
public sealed class ResponseInMask : StageMethod
{
    private const string FrontToBack = "frontToBackDb";
    private const double ReferenceHz = 1000;

    /// <inheritdoc/>
    public override string Name => "response-in-mask";

    /// <inheritdoc/>
    public override int Version => 1;

    /// <inheritdoc/>
    public override IEnumerable<string> ProblemsWith(Stage stage)
    {
        if (stage.Parameters.Mask is not { } corners)
        {
            return ["a response needs 'parameters: mask'"];
        }

        var mask = ToleranceMask.ProblemWith(PointsOf(corners));
        var masked = MaskedNames(stage).ToList();
        var unknown = masked.Where(n => stage.Evidence.All(e => e.Name != n || e.Kind != EvidenceKind.FrequencyResponse.Code()));
        return
        [
            .. mask is null ? [] : new[] { mask },
            .. masked.Count == 0 ? ["a response needs evidence of kind frequency-response"] : Array.Empty<string>(),
            .. unknown.Select(n => $"'maskedEvidence' names '{n}', which is no frequency-response of this stage"),
            .. NeedsComputed(stage, masked.Select(MarginOf)),
        ];
    }

    /// <inheritdoc/>
    public override StageOutcome Judge(StageInput input)
    {
        var mask = new ToleranceMask(PointsOf(input.Stage.Parameters.Mask!));
        var values = new List<ComputedValue>();
        var findings = new List<StageFinding>();
        foreach (var name in MaskedNames(input.Stage))
        {
            if (input.File(name) is not { } file)
            {
                continue;
            }

            var (curve, problem) = Read(file);
            var judgement = curve is null ? null : ResponseAgainstMask.Judge(curve, mask);
            if (judgement is not { WorstMarginDb: { } margin, Verdict: not MaskVerdict.NotShown })
            {
                return StageOutcome.CannotJudge($"The response '{name}' cannot be judged: {problem ?? judgement?.Words}.");
            }

            values.Add(Decibels(MarginOf(name), margin, file.Id));
            findings.Add(new($"{name}: {judgement.Words}", judgement.Verdict == MaskVerdict.Outside));
        }

        return AddFrontToBack(input, values) is { } refusal ? StageOutcome.CannotJudge(refusal) : new(values, findings);
    }

    private static string? AddFrontToBack(StageInput input, List<ComputedValue> values)
    {
        if (input.Stage.Characteristic(FrontToBack) is null)
        {
            return null;
        }

        if (input.File("front") is not { } front || input.File("rear") is not { } rear)
        {
            return "The front-to-back ratio needs the responses 'front' and 'rear'.";
        }

        var (frontCurve, frontProblem) = Read(front);
        var (rearCurve, rearProblem) = Read(rear);
        if (frontCurve?.LevelAt(ReferenceHz) is not { } ahead || rearCurve?.LevelAt(ReferenceHz) is not { } behind)
        {
            return $"The front-to-back ratio cannot be found: {frontProblem ?? rearProblem ?? "front or rear has nothing at 1 kHz"}.";
        }

        values.Add(Decibels(FrontToBack, ahead - behind, front.Id));
        return null;
    }

    private static (ResponseCurve? Curve, string? Problem) Read(EvidenceFile file)
    {
        var read = FrequencyResponseFile.Read(file.Bytes);
        return read.IsGood
            ? (new ResponseCurve([.. read.Data.Points.Select(p => new ResponsePoint(p.FrequencyHz, p.LevelDb))]), null)
            : (null, string.Join("; ", read.Problems));
    }

    private static ComputedValue Decibels(string name, double value, Guid evidence)
    {
        var rounded = Math.Round((decimal)value, 2);
        return new(name, rounded, rounded.ToString("0.00", CultureInfo.InvariantCulture), evidence);
    }

    private static IEnumerable<string> MaskedNames(Stage stage) =>
        stage.Parameters.MaskedEvidence ?? stage.Evidence.Where(e => e.Kind == EvidenceKind.FrequencyResponse.Code()).Select(e => e.Name);

    private static string MarginOf(string name) => $"{name}MarginDb";

    private static MaskPoint[] PointsOf(IReadOnlyList<MaskCorner> corners) => [.. corners.Select(c => new MaskPoint((double)c.FrequencyHz, (double)c.LowerDb, (double)c.UpperDb))];
}
