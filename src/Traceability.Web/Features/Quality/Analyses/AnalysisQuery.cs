using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Quality.FilmLots;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Persistence.Queries.Analyses;

namespace Traceability.Web.Features.Quality.Analyses;

/// <summary>What every analysis may be asked to keep to. Days or moments; a day given as the end is counted in.</summary>
public sealed record AnalysisQuery(string? From, string? To, string? Model, string? Stage)
{
    /// <summary>The same from the address of a page.</summary>
    public static AnalysisQuery Of(HttpRequest request) =>
        new(Text(request, "from"), Text(request, "to"), Text(request, "model"), Text(request, "stage"));

    /// <summary>A field of the address; what is left blank is left out.</summary>
    public static string? Text(HttpRequest request, string name) => request.Query[name].ToString() is { Length: > 0 } text ? text : null;
}

/// <summary>Makes a filter of what was asked, or says what is wrong with it.</summary>
public sealed class AnalysisFilters(WorkshopContext db, RouteShelf routes, WorkshopCalendar calendar, TimeProvider clock)
{
    /// <summary>How far back an analysis looks when nobody says from when.</summary>
    public const int UsualDays = 365;

    /// <summary>The filter, or the refusal.</summary>
    public async Task<(AnalysisFilter Filter, Refusal? Refusal)> ReadAsync(
        AnalysisQuery asked,
        bool placesToo,
        CancellationToken cancellation
    )
    {
        var now = clock.GetUtcNow();
        var filter = new AnalysisFilter(
            now.AddDays(-UsualDays),
            now.AddMinutes(1),
            Trimmed(asked.Model)?.ToUpperInvariant(),
            Trimmed(asked.Stage)?.ToLowerInvariant(),
            calendar.Zone.Id
        );
        if (Trimmed(asked.To) is { } to)
        {
            if (Moment(to, 1) is not { } end)
            {
                return (filter, Unreadable("to", to));
            }

            filter = filter with { To = end, From = end.AddDays(-UsualDays) };
        }

        if (Trimmed(asked.From) is { } from)
        {
            if (Moment(from, 0) is not { } start)
            {
                return (filter, Unreadable("from", from));
            }

            filter = filter with { From = start };
        }

        return filter.From >= filter.To ? (filter, Refusal.Invalid("from", QualitySentences.PeriodEndsBeforeItBegins))
            : filter.Model is { } model && !await db.Set<RouteRevision>().AnyAsync(r => r.Model == model, cancellation)
                ? (filter, Refusal.Invalid("model", QualitySentences.ThereIsNoModel(model)))
            : filter.Stage is { } stage && !(placesToo && FilmPlace.All.Contains(stage)) && !await IsStageAsync(stage, cancellation)
                ? (filter, Refusal.Invalid("stage", QualitySentences.NoRouteHasAStage(stage)))
            : (filter, null);
    }

    /// <summary>Every stage of the routes in force, by kind of part.</summary>
    public async Task<IReadOnlyList<(string Kind, Traceability.Domain.Routes.Stage Stage)>> StagesAsync(CancellationToken cancellation) =>
        [
            .. (await routes.AllInForceAsync(db, calendar.DayOf(clock.GetUtcNow()), cancellation))
                .SelectMany(r => r.Stages.Select(s => (r.Kind, Stage: s)))
                .DistinctBy(s => (s.Kind, s.Stage.Code)),
        ];

    /// <summary>What the routes in force call their stages.</summary>
    public async Task<StageNames> NamesAsync(CancellationToken cancellation) =>
        new(await routes.AllInForceAsync(db, calendar.DayOf(clock.GetUtcNow()), cancellation));

    /// <summary>The models that have routes.</summary>
    public async Task<IReadOnlyList<string>> ModelsAsync(CancellationToken cancellation) =>
        await db.Set<RouteRevision>()
            .Where(r => r.Kind != PartKinds.FilmLot)
            .Select(r => r.Model)
            .Distinct()
            .Order()
            .ToListAsync(cancellation);

    private async Task<bool> IsStageAsync(string stage, CancellationToken cancellation) =>
        await db.Set<Attempt>().AnyAsync(a => a.Stage == stage, cancellation)
        || (await StagesAsync(cancellation)).Any(s => s.Stage.Code == stage);

    private static Refusal Unreadable(string field, string text) =>
        Refusal.Invalid(field, QualitySentences.NeitherADayNorAMoment(text.Length > 40 ? text[..40] : text));

    private static string? Trimmed(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    private DateTimeOffset? Moment(string text, int daysOn)
    {
        var invariant = System.Globalization.CultureInfo.InvariantCulture;
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", invariant, System.Globalization.DateTimeStyles.None, out var day))
        {
            return day.Year is < 1950 or > 2199 ? null : StartOf(day.AddDays(daysOn));
        }

        return
            text.Contains('T', StringComparison.Ordinal)
            && DateTimeOffset.TryParse(text, invariant, System.Globalization.DateTimeStyles.AssumeUniversal, out var moment)
            && moment.UtcDateTime.Year is >= 1950 and < 2200
            ? moment.ToUniversalTime()
            : null;
    }

    private DateTimeOffset StartOf(DateOnly day)
    {
        var local = day.ToDateTime(TimeOnly.MinValue);
        return new DateTimeOffset(
            local,
            calendar.Zone.IsInvalidTime(local) ? calendar.Zone.BaseUtcOffset : calendar.Zone.GetUtcOffset(local)
        ).ToUniversalTime();
    }
}
