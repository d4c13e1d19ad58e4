using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>
/// A reading sent by an instrument that knows its station: it is recorded in the one attempt open there. A machine that knows the part
/// or the attempt names it, and then the reading is recorded nowhere else.
/// </summary>
public sealed class SendReading(WorkshopContext db, TakeReadings readings) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/stations/{code}/readings", HandleAsync)
            .For(Role.Builder, Role.Instrument)
            .Is(Subjects.Attempts, "sendReading", "A machine's reading, into the attempt now open at the station.");

    private const int MostNamed = 500;

    /// <summary>A reading as a machine sends it.</summary>
    /// <param name="Characteristic" example="insulationGOhm">The characteristic, as the route names it.</param>
    /// <param name="Value" example="412.0">The value in the route's unit, with all its digits.</param>
    /// <param name="OccurredAt" example="2026-11-25T08:05:00Z">When it happened; now, when it is left out.</param>
    /// <param name="Serial" example="US26-00034">
    /// The part that was measured; without it the one attempt that is open at the station takes the reading.
    /// </param>
    /// <param name="Attempt" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The attempt that was measured in.</param>
    public sealed record Input(
        string Characteristic,
        NumberText Value,
        DateTimeOffset? OccurredAt = null,
        string? Serial = null,
        Guid? Attempt = null
    );

    /// <param name="code" example="INSUL-1">The station's code.</param>
    public static Task<Results<Recorded<TakeReadings.Output>, Problem>> HandleAsync(
        string code,
        Input input,
        SignedIn signedIn,
        SendReading use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(code, input, signedIn.Actor, cancellation));

    public async Task<Answer<TakeReadings.Output>> RunAsync(string code, Input input, Actor actor, CancellationToken cancellation)
    {
        var station = code.Trim().ToUpperInvariant();
        if (!await db.Kept<Domain.Records.Station>().AnyAsync(s => s.Code == station, cancellation))
        {
            return Refusal.NotFound(PartsSentences.ThereIsNoStation(code));
        }

        var open = await (
            from s in db.Set<PartStanding>()
            join a in db.Set<Attempt>() on s.OpenAttemptId equals a.Id
            join p in db.Set<Part>() on a.PartId equals p.Id
            where a.Station == station
            orderby p.Serial
            select new { a.Id, p.Serial }
        )
            .Take(MostNamed)
            .ToListAsync(cancellation);
        var serial = input.Serial?.Trim().ToUpperInvariant();
        var named = open.Where(o => (serial is null || o.Serial == serial) && (input.Attempt is not { } attempt || o.Id == attempt))
            .ToList();
        return named switch
        {
            [] when open.Count == 0 => Refusal.Conflict(StationSentences.NoAttemptIsOpenAt(station), RefusalCode.NoAttemptOpen),
            [] => Refusal.Conflict(
                StationSentences.AnotherAttemptIsOpenAt(
                    station,
                    string.Join(", ", open.Select(o => o.Serial)),
                    serial ?? input.Attempt.ToString()!
                ),
                RefusalCode.AnotherAttemptOpen
            ),
            [var only] => await readings.RunAsync(
                only.Id,
                [new(input.Characteristic, input.Value, input.OccurredAt)],
                actor,
                cancellation,
                sentToStation: true
            ),
            _ => Refusal.Conflict(
                StationSentences.SeveralAttemptsAreOpenAt(open.Count, station, string.Join(", ", open.Select(o => o.Serial))),
                RefusalCode.SeveralAttemptsOpen
            ),
        };
    }
}
