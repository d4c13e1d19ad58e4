using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Codes;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Http;
using DomainStation = Traceability.Domain.Records.Station;

namespace Traceability.Web.Features.Setup.Stations;

/// <summary>The benches and cabinets.</summary>
public sealed class Stations(WorkshopContext db, Writes writes)
{
    public sealed record StationAnswer(string Code, string Title);

    public static Task<IResult> AddAsync(StationAnswer input, SignedIn signedIn, Stations use, Writes writes) =>
        writes.RunAsync(cancellation => use.RunAsync(input, signedIn.Actor.PersonId, cancellation));

    public static async Task<IResult> ListAsync(HttpContext http, PageRequest page, Stations use, CancellationToken cancellation) =>
        Csv.Answer(http, page.Part(await use.AllAsync(cancellation), s => s.Code));

    public async Task<IReadOnlyList<StationAnswer>> AllAsync(CancellationToken cancellation) =>
        await db.Set<DomainStation>()
            .AsNoTracking()
            .OrderBy(s => s.Code)
            .Select(s => new StationAnswer(s.Code, s.Title))
            .ToListAsync(cancellation);

    public async Task<Answer> RunAsync(StationAnswer input, Guid by, CancellationToken cancellation)
    {
        if (!CodeText.TryRead(input.Code, SetupSentences.StationCode, out var code, out var bad))
        {
            return Refusal.Invalid("code", bad);
        }

        if (string.IsNullOrWhiteSpace(input.Title) || input.Title.Length > 120)
        {
            return Refusal.Invalid("title", SetupSentences.TitleHasToCharacters);
        }

        if (await db.Set<DomainStation>().AnyAsync(s => s.Code == code, cancellation))
        {
            return Refusal.Conflict(SetupSentences.ThereIsAStationAlready(code), RefusalCode.AlreadyExists);
        }

        var stamp = writes.Stamp(by);
        var station = new DomainStation(stamp.NewId(), code, input.Title.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        await writes.Book.AppendAsync(station.Id, "add-station", [station], cancellation);
        return Answer.Created(new StationAnswer(station.Code, station.Title));
    }
}
