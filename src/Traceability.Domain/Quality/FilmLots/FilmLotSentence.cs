using Traceability.Domain.Routes;

namespace Traceability.Domain.Quality.FilmLots;

/// <summary>
/// Says a film lot's line in words: how many are on their way, where how many of those that got there failed, and the yield with what it
/// stands on.
/// </summary>
public static class FilmLotSentence
{
    /// <summary>The line in words.</summary>
    public static string Of(FilmLotFailures lot, StageNames names)
    {
        LotStageCount[] failed = [.. InOrder(lot.Stages, names).Where(s => s.Failed > 0)];
        string[] said =
        [
            FilmLotTexts.Started(lot.Started, lot.OnItsWay),
            failed.Length == 0
                ? FilmLotTexts.NothingFailed
                : FilmLotTexts.FailedAt(
                    string.Join(", ", failed.Select(s => FilmLotTexts.OfThoseThatReached(TitleOf(s, names), s.Failed, s.Reached)))
                ),
            lot.Yield.Match(
                y => FilmLotTexts.YieldOver(y.Stages, 100 * y.Value, 100 * y.Interval.Lower, 100 * y.Interval.Upper),
                missing => $"{missing}."
            ),
            FilmLotTexts.CapsulesCountOnce,
        ];
        return string.Join(" ", lot.Stages.Count == 0 ? said[..1] : said);
    }

    /// <summary>The stages as the work goes; what was reported by hand after the stages of its kind, the field last.</summary>
    public static IEnumerable<LotStageCount> InOrder(IEnumerable<LotStageCount> stages, StageNames names) =>
        stages
            .OrderBy(s => names.PlaceOf(null, s.Kind, s.Stage))
            .ThenBy(s => s.Stage == FilmPath.Field)
            .ThenBy(s => s.Stage, StringComparer.Ordinal);

    /// <summary>What people call the stage.</summary>
    public static string TitleOf(LotStageCount stage, StageNames names) =>
        stage.Stage switch
        {
            LotStageCount.ByHand => FilmLotTexts.ReportedByHand(stage.Kind),
            FilmPath.Field => FilmLotTexts.CameBack,
            _ => names.TitleOf(null, stage.Kind, stage.Stage),
        };
}
