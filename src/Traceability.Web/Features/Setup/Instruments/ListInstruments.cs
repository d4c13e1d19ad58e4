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

    public sealed record InstrumentAnswer(
        string Code,
        string Kind,
        string Title,
        string State,
        DateOnly? CalibratedOn,
        DateOnly? DueOn,
        decimal? CheckNominal,
        decimal? CheckTolerance,
        string? CheckUnit
    );

    public static async Task<Table<Page<InstrumentAnswer>>> HandleAsync(
        HttpContext http,
        PageRequest page,
        InstrumentQuery instruments,
        WorkshopCalendar calendar,
        Writes writes,
        CancellationToken cancellation
    )
    {
        var day = calendar.DayOf(writes.Now);
        return Csv.Answer(page.Part([.. (await instruments.FindAsync(null, cancellation)).Select(i => Of(i, day, calendar))], i => i.Code));
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
