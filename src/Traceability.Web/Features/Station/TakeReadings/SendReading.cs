using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Http;
using DomainStation = Traceability.Domain.Records.Station;

namespace Traceability.Web.Features.Station.TakeReadings;

/// <summary>A reading sent by an instrument that knows its station but not the part: it lands in the one attempt open there.</summary>
public sealed class SendReading(WorkshopContext db, EnterReadings readings)
{
    public static Task<IResult> HandleAsync(string code, EnterReadings.Input input, SignedIn signedIn, SendReading use, Writes writes) =>
        writes.RunAsync(cancellation => use.RunAsync(code, input, signedIn.Actor, cancellation));

    public async Task<Answer> RunAsync(string code, EnterReadings.Input input, Actor actor, CancellationToken cancellation)
    {
        var station = code.Trim().ToUpperInvariant();
        if (!await db.Set<DomainStation>().AnyAsync(s => s.Code == station, cancellation))
        {
            return Refusal.NotFound(StationSentences.ThereIsNoStation(code));
        }

        var open = await (from s in db.Set<PartStanding>()
                          join a in db.Set<Attempt>() on s.OpenAttemptId equals a.Id
                          join p in db.Set<Part>() on a.PartId equals p.Id
                          where a.Station == station
                          orderby p.Serial
                          select new { a.Id, p.Serial }).Take(20).ToListAsync(cancellation);
        return open switch
        {
            [] => Refusal.Conflict(StationSentences.NoAttemptIsOpenAt(station), RefusalCode.NoAttemptOpen),
            [var only] => await readings.RunAsync(only.Id, [input], actor, cancellation, atStation: true),
            _ => Refusal.Conflict(StationSentences.SeveralAttemptsAreOpenAt(open.Count, station, string.Join(", ", open.Select(o => o.Serial))), RefusalCode.SeveralAttemptsOpen),
        };
    }
}
