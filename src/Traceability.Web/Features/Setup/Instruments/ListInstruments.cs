using Traceability.Domain.Gates;
using Traceability.Domain.Values;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Instruments;

/// <summary>All instruments with where they stand today.</summary>
public sealed class ListInstruments : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/instruments", HandleAsync).Is(Subjects.Instruments, "listInstruments", "Instruments with where they stand today.");

    /// <summary>An instrument with where it stands today.</summary>
    /// <param name="Code" example="RB-1">Its code, as its label says it.</param>
    /// <param name="Kind" example="resonance-bench">Its kind, which stages ask for.</param>
    /// <param name="Title" example="Resonance bench 1">What it is.</param>
    /// <param name="State" example="usable">Where it stands today.</param>
    /// <param name="CalibratedOn" example="2026-01-31">The day of its latest calibration.</param>
    /// <param name="DueOn" example="2027-01-31">The last day on which that counts.</param>
    /// <param name="CheckNominal" example="1000">What it must read at its reference; null when it is not checked daily.</param>
    /// <param name="CheckTolerance" example="2">How far from it the reading may be, in CheckUnit.</param>
    /// <param name="CheckUnit" example="Hz">The unit of both.</param>
    public sealed record InstrumentAnswer(
        string Code,
        string Kind,
        string Title,
        [property: OneOf(typeof(InstrumentState))] string State,
        DateOnly? CalibratedOn,
        DateOnly? DueOn,
        decimal? CheckNominal,
        decimal? CheckTolerance,
        string? CheckUnit
    );

    /// <param name="retired" example="true">Those that are retired too; without it only what new work may use.</param>
    public static async Task<JsonOrCsv<Page<InstrumentAnswer>>> HandleAsync(
        HttpContext http,
        PageRequest page,
        InstrumentQuery instruments,
        WorkshopCalendar calendar,
        Writes writes,
        CancellationToken cancellation,
        bool retired = false
    )
    {
        var day = calendar.DayOf(writes.Now);
        var found = (await instruments.FindAsync(null, cancellation)).Where(i => retired || i.Retired is null);
        return JsonOrCsv.Of(page.Part([.. found.Select(i => Of(i, day, calendar))], i => i.Code));
    }

    public static InstrumentAnswer Of(InstrumentStanding i, DateOnly day, WorkshopCalendar calendar) =>
        new(
            i.Instrument.Code,
            i.Instrument.Kind,
            i.Instrument.Title,
            Words.Of(i.StateOn(day, calendar)),
            i.LatestCalibration(day)?.CalibratedOn,
            i.LatestCalibration(day)?.DueOn,
            i.Instrument.CheckNominal,
            i.Instrument.CheckTolerance,
            i.Instrument.CheckUnit
        );
}
