using Traceability.Domain.Quality.GaugeStudy;
using Traceability.Domain.Records;
using Traceability.Domain.Work.Studies;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.GaugeStudies;

/// <summary>A study in lists.</summary>
public sealed record StudyRow(
    string Number,
    string Title,
    string Characteristic,
    string Unit,
    string InstrumentKind,
    int Parts,
    int People,
    int Repeats,
    int Taken,
    int Missing,
    DateTimeOffset DesignedAt
)
{
    public static StudyRow Of(StudyView v) =>
        new(
            v.Study.Number,
            v.Study.Title,
            v.Study.Characteristic,
            v.Study.Unit,
            v.Study.InstrumentKind,
            v.Study.Pieces.Length,
            v.Study.People.Length,
            v.Study.Repeats,
            v.Counting.Count,
            v.Missing.Count,
            v.Study.OccurredAt
        );
}

/// <summary>A reading of a study; <c>Counts</c> is false once a later one took its place.</summary>
public sealed record StudyReadingAnswer(
    Guid Id,
    string Part,
    string Person,
    int Trial,
    NumberText Value,
    bool Counts,
    string? Reason,
    DateTimeOffset At
)
{
    public static StudyReadingAnswer Of(MeasurementStudyReading r, bool counts) =>
        new(r.Id, r.Piece, r.Person, r.Trial, new(r.Digits), counts, r.Reason, r.OccurredAt);
}

/// <summary>One line of the analysis of variance; F and p are missing where nothing is left to measure the line by.</summary>
public sealed record StudyVariance(string Source, double SumOfSquares, int DegreesOfFreedom, double MeanSquare, double? F, double? P);

/// <summary>One source of spread as a standard deviation, and its share of the whole spread in percent.</summary>
public sealed record StudySpread(string Source, double StandardDeviation, double? PercentOfTotal);

/// <summary>What the study shows. Numbers that cannot be said (a division by no spread at all) are missing.</summary>
public sealed record StudyResult(
    IReadOnlyList<StudyVariance> Variance,
    bool InteractionPooled,
    IReadOnlyList<StudySpread> Spread,
    double? GaugePercentOfTotal,
    double? GaugePercentOfTolerance,
    double? DistinctCategories
)
{
    public static StudyResult Of(CrossedGaugeStudy s, MeasurementStudy design)
    {
        var error = s.IsInteractionPooled ? s.Pooled : s.Repeatability;
        var against = s.IsInteractionPooled ? s.Pooled : s.Interaction;
        var v = s.Variation;
        return new(
            [
                Line("parts", s.Part, against),
                Line("people", s.Appraiser, against),
                Line("interaction", s.Interaction, s.Repeatability),
                new(
                    "repeatability",
                    s.Repeatability.SumOfSquares,
                    s.Repeatability.DegreesOfFreedom,
                    s.Repeatability.MeanSquare,
                    null,
                    null
                ),
                .. s.IsInteractionPooled
                    ? new[] { new StudyVariance("pooled", error.SumOfSquares, error.DegreesOfFreedom, error.MeanSquare, null, null) }
                    : [],
            ],
            s.IsInteractionPooled,
            [
                Of("repeatability", v.Repeatability, v),
                Of("reproducibility", v.Reproducibility, v),
                Of("interaction", v.Interaction, v),
                Of("gauge", v.Gauge, v),
                Of("parts", v.Part, v),
                Of("total", v.Total, v),
            ],
            Finite(v.GaugePercentOfTotal),
            design is { Lower: { } lower, Upper: { } upper } ? Finite(v.GaugePercentOfTolerance((double)(upper - lower))) : null,
            v.Gauge == 0 ? null : v.DistinctCategories
        );
    }

    private static StudyVariance Line(string source, VarianceSource line, VarianceSource error)
    {
        var test = CrossedGaugeStudy.Against(line, error);
        return new(source, line.SumOfSquares, line.DegreesOfFreedom, line.MeanSquare, Finite(test.Statistic), Finite(test.P));
    }

    private static StudySpread Of(string source, double deviation, GaugeVariation all) =>
        new(source, deviation, Finite(100 * deviation / all.Total));

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}

/// <summary>A study whole: its design, its readings, and its result or what is missing for one.</summary>
public sealed record StudyAnswer(
    string Number,
    string Title,
    string Characteristic,
    string Unit,
    string InstrumentKind,
    IReadOnlyList<string> Parts,
    IReadOnlyList<string> People,
    int Repeats,
    decimal? Lower,
    decimal? Upper,
    IReadOnlyList<StudyReadingAnswer> Readings,
    int Missing,
    StudyResult? Result,
    string? NotEnough
)
{
    public static StudyAnswer Of(StudyView v)
    {
        var counting = v.Counting.Values.Select(r => r.Id).ToHashSet();
        var result = CrossedGaugeStudy.Of(v);
        return new(
            v.Study.Number,
            v.Study.Title,
            v.Study.Characteristic,
            v.Study.Unit,
            v.Study.InstrumentKind,
            v.Study.Pieces,
            v.Study.People,
            v.Study.Repeats,
            v.Study.Lower,
            v.Study.Upper,
            [.. v.Readings.OrderBy(r => r.Id).Select(r => StudyReadingAnswer.Of(r, counting.Contains(r.Id)))],
            v.Missing.Count,
            result.IsKnown ? StudyResult.Of(result.Value, v.Study) : null,
            result.Missing?.ToString()
        );
    }
}
