using System.Diagnostics;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Shared;

/// <summary>
/// The revision of the workshop that this instance works by: asked for anew with the first request of every second, because another
/// instance may have written the next one. What is printed for good does not rely on it and asks the database itself.
/// </summary>
public sealed class CurrentWorkshop(IConfiguration configuration)
{
    private static readonly TimeSpan Moment = TimeSpan.FromSeconds(1);

    private volatile Known known = new(null, null, 0);

    /// <summary>What was set over it at the start.</summary>
    public WorkshopOverrides Set { get; } = WorkshopOverrides.Of(configuration);

    /// <summary>The revision in force.</summary>
    public WorkshopRevision? Revision => known.Revision;

    /// <summary>The workshop's calendar.</summary>
    public WorkshopCalendar Calendar =>
        known.Calendar ?? (known = known with { Calendar = new WorkshopFacts(known.Revision, Set, false).Calendar }).Calendar!;

    /// <summary>The language that the workshop works in.</summary>
    public string Language => new WorkshopFacts(known.Revision, Set, false).Language;

    /// <summary>A revision was written here: the next request asks for it.</summary>
    public void Forget() => known = known with { AskedAt = 0 };

    /// <summary>Asks at the beginning of a request, at most once a second.</summary>
    public static async Task AskAsync(HttpContext context, RequestDelegate next)
    {
        var current = context.RequestServices.GetRequiredService<CurrentWorkshop>();
        if (!context.Request.Path.StartsWithSegments(Addresses.Health) && current.IsOld)
        {
            // On a connection of its own: one that fails here must not be the one that the request goes on with.
            await using var scope = context.RequestServices.GetRequiredService<IServiceScopeFactory>().CreateAsyncScope();
            await current.AskAsync(scope.ServiceProvider.GetRequiredService<WorkshopQuery>(), context.RequestAborted);
        }

        if (current.Revision?.SingleHanded == true)
        {
            SessionAuthentication.WorkSingleHanded(context);
        }

        await next(context);
    }

    private bool IsOld => known.AskedAt == 0 || Stopwatch.GetElapsedTime(known.AskedAt) > Moment;

    private async Task AskAsync(WorkshopQuery query, CancellationToken cancellation)
    {
        try
        {
            var at = Stopwatch.GetTimestamp();
            var latest = await query.LatestAsync(cancellation);
            known = new(latest, latest?.TimeZone == known.Revision?.TimeZone ? known.Calendar : null, at);
        }
        catch (Exception e) when (DatabaseFailure.Is(e))
        {
            // Whoever needs the database is told so there; what does not, is answered with what is known.
        }
    }

    private sealed record Known(WorkshopRevision? Revision, WorkshopCalendar? Calendar, long AskedAt);
}
