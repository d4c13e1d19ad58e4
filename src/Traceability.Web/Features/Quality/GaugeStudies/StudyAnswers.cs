using Traceability.Domain.Quality.GaugeStudy;
using Traceability.Domain.Records;
using Traceability.Domain.Work.Studies;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Quality.GaugeStudies;

/// <summary>A gauge study in lists.</summary>
/// <param name="Number" example="GS-0002">Its number.</param>
/// <param name="Title" example="Capacitance of capsules">What it is called.</param>
/// <param name="Characteristic" example="capacitancePf">What is measured.</param>
/// <param name="Unit" example="pF">In which unit.</param>
/// <param name="InstrumentKind" example="capacitance-meter">With what kind of instrument.</param>
/// <param name="Parts" example="10">How many pieces.</param>
/// <param name="People" example="3">How many people.</param>
/// <param name="Repeats" example="2">How often each person measures each piece.</param>
/// <param name="Taken" example="40">Cells that have a reading.</param>
/// <param name="Missing" example="20">Cells still to be measured.</param>
/// <param name="DesignedAt" example="2026-11-03T09:00:00Z">When it was designed.</param>
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

/// <summary>A reading of a study.</summary>
/// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The reading's id.</param>
/// <param name="Part" example="P4">The piece measured.</param>
/// <param name="Person" example="B2">Badge of who measured.</param>
/// <param name="Trial" example="1">Which of the repeats, from 1.</param>
/// <param name="Value" example="70.52">The value, with the digits that were sent, in the study's unit.</param>
/// <param name="Counts" example="true">False once a later reading took its place.</param>
/// <param name="Reason" example="read the wrong scale">Why it replaced an earlier one; null for a first reading.</param>
/// <param name="At" example="2026-11-04T10:15:00Z">When it was taken.</param>
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

/// <summary>One line of the analysis of variance.</summary>
/// <param name="Source" example="parts">What varies: parts, people, interaction, repeatability or pooled.</param>
/// <param name="SumOfSquares" example="2.0587">Its sum of squares.</param>
/// <param name="DegreesOfFreedom" example="9">Its degrees of freedom.</param>
/// <param name="MeanSquare" example="0.2287">Its mean square.</param>
/// <param name="F" example="39.72">Against what it is measured by; null where there is nothing to measure it by.</param>
/// <param name="P" example="0.00001">Its p, 0 to 1; null without F.</param>
public sealed record StudyVariance(string Source, double SumOfSquares, int DegreesOfFreedom, double MeanSquare, double? F, double? P);

/// <summary>One source of spread.</summary>
/// <param name="Source" example="gauge">Where it comes from: repeatability, reproducibility, interaction, gauge, parts or total.</param>
/// <param name="StandardDeviation" example="0.058">Its standard deviation, in the study's unit.</param>
/// <param name="PercentOfTotal" example="27.9">Its share of the whole spread, in percent; null without any spread.</param>
public sealed record StudySpread(string Source, double StandardDeviation, double? PercentOfTotal);

/// <summary>What a study shows.</summary>
/// <param name="Variance">The analysis of variance.</param>
/// <param name="InteractionPooled" example="false">
/// True when the interaction was too small to be told from repeatability and was pooled with it.
/// </param>
/// <param name="Spread">The sources of spread.</param>
/// <param name="GaugePercentOfTotal" example="27.9">Spread of the gauge in percent of the whole spread; null without any spread.</param>
/// <param name="GaugePercentOfTolerance" example="18.4">The same in percent of the distance between the limits; null without both.</param>
/// <param name="DistinctCategories" example="4">
/// How many groups of pieces the gauge can tell apart; null when the gauge has no spread.
/// </param>
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
/// <param name="Number" example="GS-0002">Its number.</param>
/// <param name="Title" example="Capacitance of capsules">What it is called.</param>
/// <param name="Characteristic" example="capacitancePf">What is measured.</param>
/// <param name="Unit" example="pF">In which unit.</param>
/// <param name="InstrumentKind" example="capacitance-meter">With what kind of instrument.</param>
/// <param name="Parts">The pieces.</param>
/// <param name="People">Badges of the people.</param>
/// <param name="Repeats" example="2">How often each person measures each piece.</param>
/// <param name="Lower" example="68">Lower limit; null without one.</param>
/// <param name="Upper" example="73">Upper limit; null without one.</param>
/// <param name="Readings">The readings, in the order in which they were taken.</param>
/// <param name="Missing" example="20">Cells still to be measured.</param>
/// <param name="Result">What it shows; null while something is missing.</param>
/// <param name="NotEnough" example="not enough data: needs at least 1 parts, has 0">
/// What is missing for a result; null when there is one.
/// </param>
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
