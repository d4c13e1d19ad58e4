using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Traceability.Domain.Quality.Capability;
using Traceability.Domain.Quality.Charts;
using Traceability.Domain.Quality.Summaries;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Queries.Analyses;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Features.Setup.Routes;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.ControlCharts;

/// <summary>What can be asked of a chart beside stage, period and model.</summary>
public sealed record ChartAsked(string? Characteristic, string? By, string? Lots);

/// <summary>Is this characteristic steady, and does it fit its limits.</summary>
public sealed class DrawControlChart(ChartQuery query, AnalysisFilters filters, KindsOfRoutes kinds) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/quality/control-chart", HandleAsync)
            .For(Role.Quality)
            .Is(
                Subjects.Analyses,
                "drawControlChart",
                "A characteristic over time: limits, Nelson's rules, subgroups, capability, and its values by lot."
            );

    /// <summary>About how many points an answer holds; marked points come on top.</summary>
    public const int MostPoints = 2000;

    private const double EwmaWeight = 0.2;

    /// <summary>How the figures are computed.</summary>
    public const string Computed =
        "Every value that came to a verdict in the period, in the order of work, corrected values as they count now; lower bounds are"
        + " left out. Models are never mixed, for each has its own aim: without one, the model with the most values is taken."
        + " Individuals: mean and 3 sigma, sigma from the mean moving range / 1.128379; "
        + "moving ranges: 0 to 3.267 times their mean; EWMA with weight 0.2 and 3 sigma limits; Nelson's eight rules on the"
        + " individuals; X-bar/R on subgroups of equal size. Capability: Cp and Cpk with the short-term "
        + "sigma, Pp and Ppk with the overall standard deviation and 95 % intervals; not to be quoted below 30 values, with a point"
        + " beyond 3 sigma, or when Anderson-Darling gives p below 0.05.";

    /// <param name="characteristic" example="ringResonanceHz">The characteristic to draw; it must be named.</param>
    /// <param name="by" example="week">What makes a subgroup: week or load; week when it is left out.</param>
    /// <param name="lots" example="film">A kind of lot whose numbers the values are told apart by.</param>
    public static async Task<Results<JsonOrCsv<ControlChartAnswer>, Problem>> HandleAsync(
        HttpContext http,
        [AsParameters] AnalysisQuery asked,
        [FromQuery] string? characteristic,
        [FromQuery] string? by,
        [FromQuery] string? lots,
        DrawControlChart use,
        CancellationToken cancellation
    )
    {
        var (answer, refusal) = await use.RunAsync(asked, new(characteristic, by, lots), cancellation);
        return refusal is not null ? ProblemAnswers.From(refusal) : JsonOrCsv.Of(answer!, answer!.Points);
    }

    /// <summary>The chart, or what is wrong with the question.</summary>
    public async Task<(ControlChartAnswer? Answer, Refusal? Refusal)> RunAsync(
        AnalysisQuery asked,
        ChartAsked more,
        CancellationToken cancellation
    )
    {
        var (filter, refusal) = await filters.ReadAsync(asked, placesToo: false, cancellation);
        refusal ??= filter.Stage is null ? Refusal.Invalid("stage", QualitySentences.SayWhichStage) : null;
        refusal ??= string.IsNullOrWhiteSpace(more.Characteristic)
            ? Refusal.Invalid("characteristic", QualitySentences.SayWhichCharacteristic)
            : null;
        refusal ??= more.By is null or "" or "week" or "load" ? null : Refusal.Invalid("by", QualitySentences.WeekOrLoad);
        if (refusal is not null)
        {
            return (null, refusal);
        }

        var characteristic = more.Characteristic!.Trim();
        var lotKind = string.IsNullOrWhiteSpace(more.Lots) ? null : more.Lots.Trim().ToLowerInvariant();
        var by = more.By is "load" ? "load" : "week";
        if (await kinds.LotAsync("lots", lotKind, cancellation) is { } unknown)
        {
            return (null, unknown);
        }

        var all = await query.PointsAsync(filter, characteristic, loads: by == "load", lotKind, cancellation);
        return
            all.Count == 0
            && !(await filters.StagesAsync(cancellation)).Any(s =>
                s.Stage.Code == filter.Stage && s.Stage.Characteristics.Any(c => c.Name == characteristic)
            )
            ? (null, Refusal.Invalid("characteristic", QualitySentences.StageHasNoCharacteristic(filter.Stage, characteristic)))
            : (DrawOneModel(filter, characteristic, by, lotKind, all), null);
    }

    /// <summary>
    /// Two models around two aims would break every rule and say nothing: the one with the most values is drawn, and the others are named.
    /// </summary>
    private static ControlChartAnswer DrawOneModel(
        AnalysisFilter filter,
        string characteristic,
        string by,
        string? lotKind,
        IReadOnlyList<ChartPoint> all
    )
    {
        var models = all.GroupBy(p => p.Model).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).ToList();
        return models is [var first, _, ..]
            ? Draw(filter with { Model = first.Key }, characteristic, by, lotKind, [.. first]) with
            {
                ModelsLeftOut = [.. models.Skip(1).Select(g => new ModelLeftOut(g.Key, g.Count()))],
            }
            : Draw(filter, characteristic, by, lotKind, all);
    }

    private static ControlChartAnswer Draw(
        AnalysisFilter filter,
        string characteristic,
        string by,
        string? lotKind,
        IReadOnlyList<ChartPoint> all
    )
    {
        ChartPoint[] points = [.. all.Where(p => !p.IsBound)];
        double[] values = [.. points.Select(p => p.Value)];
        var charted = IndividualsChart.Of(values);
        var empty = new ControlChartAnswer(
            filter.From,
            filter.To,
            filter.Model,
            filter.Stage!,
            characteristic,
            all.Count > 0 ? all[^1].Unit : null,
            points.Length,
            all.Count - points.Length,
            charted.Missing?.ToString(),
            null,
            null,
            null,
            null,
            EwmaWeight,
            new Dictionary<int, int>(),
            0,
            null,
            [.. points.Select((p, i) => new ChartedPoint(i + 1, p.Serial, p.At, p.Attempt, p.Value, p.Met, null, p.Value, false, []))],
            Grouping.Of(points, by, TimeZoneInfo.FindSystemTimeZoneById(filter.Zone)),
            Capability(points, values),
            lotKind,
            lotKind is null ? [] : ByLot(points),
            Computed
        );
        if (!charted.IsKnown)
        {
            return empty;
        }

        var chart = charted.Value;
        var ewma = EwmaChart.Of(values, chart.Individuals.Centre, chart.Sigma, EwmaWeight);
        var breaks = chart.RuleBreaks.ToLookup(b => b.Index, b => (int)b.Rule);
        int[] marked = [.. breaks.Select(b => b.Key).Union(Enumerable.Range(0, values.Length).Where(i => !points[i].Met))];
        var thinned = ChartThinning.Of(values, MostPoints, marked);
        return empty with
        {
            Limits = chart.Individuals,
            Sigma = chart.Sigma,
            RangeLimits = chart.Ranges,
            EwmaLimits = ewma.FinalLimits,
            RuleBreaks = breaks.SelectMany(b => b).GroupBy(r => r).OrderBy(g => g.Key).ToDictionary(g => g.Key, g => g.Count()),
            PointsMarked = marked.Length,
            Thinned = thinned.Note,
            Points =
            [
                .. thinned.Kept.Select(i => new ChartedPoint(
                    i + 1,
                    points[i].Serial,
                    points[i].At,
                    points[i].Attempt,
                    values[i],
                    points[i].Met,
                    i == 0 ? null : chart.MovingRanges[i - 1],
                    ewma.Averages[i],
                    ewma.Limits[i].IsBeyond(ewma.Averages[i]),
                    [.. breaks[i]]
                )),
            ],
        };
    }

    private static CapabilityAnswer Capability(ChartPoint[] points, double[] values)
    {
        var limits = points.Select(p => (p.Lower, p.Upper)).Distinct().ToList();
        return limits switch
        {
            [] => CapabilityAnswer.None(null, null, QualitySentences.NotEnoughData),
            [(null, null)] => CapabilityAnswer.None(null, null, QualitySentences.ThereAreNoLimitsToFit),
            [var (lower, upper)] when lower < upper || lower is null || upper is null => CapabilityAnswer.Of(
                lower,
                upper,
                CapabilityStudy.Of(values, new((double?)lower, (double?)upper))
            ),
            [var (lower, upper)] => CapabilityAnswer.None(lower, upper, QualitySentences.LimitsLeaveNoRoom),
            _ => CapabilityAnswer.None(null, null, QualitySentences.JudgedByDifferentLimits(limits.Count)),
        };
    }

    private static LotOfValues[] ByLot(ChartPoint[] points) =>
        [
            .. points
                .GroupBy(p => p.Lots ?? "–")
                .OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => (g.Key, Values: g.Select(p => p.Value).ToArray()))
                .Select(g => new LotOfValues(
                    g.Key,
                    g.Values.Length,
                    Sample.Mean(g.Values),
                    g.Values.Min(),
                    g.Values.Max(),
                    g.Values.Length > 1 ? Sample.StandardDeviation(g.Values) : null
                )),
        ];
}
