using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Codes;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Stations;

/// <summary>The benches and cabinets.</summary>
public sealed class AddStation(WorkshopContext db, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/stations", ListAsync).Is(Subjects.Stations, "listStations", "The benches and cabinets.");
        api.MapPost("/stations", AddAsync).For(Role.Lead).Is(Subjects.Stations, "addStation", "Add a station.");
    }

    public sealed record StationAnswer(string Code, string Title);

    public static Task<Results<Recorded<StationAnswer>, Problem>> AddAsync(
        StationAnswer input,
        SignedIn signedIn,
        AddStation use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(input, signedIn.Actor.PersonId, cancellation));

    public static async Task<Table<Page<StationAnswer>>> ListAsync(
        HttpContext http,
        PageRequest page,
        AddStation use,
        CancellationToken cancellation
    ) => Csv.Answer(page.Part(await use.AllAsync(cancellation), s => s.Code));

    public async Task<IReadOnlyList<StationAnswer>> AllAsync(CancellationToken cancellation) =>
        await db.Set<Domain.Records.Station>()
            .AsNoTracking()
            .OrderBy(s => s.Code)
            .Select(s => new StationAnswer(s.Code, s.Title))
            .ToListAsync(cancellation);

    public async Task<Answer<StationAnswer>> RunAsync(StationAnswer input, Guid by, CancellationToken cancellation)
    {
        if (!CodeText.TryRead(input.Code, SetupSentences.StationCode, out var code, out var bad))
        {
            return Refusal.Invalid("code", bad);
        }

        if (string.IsNullOrWhiteSpace(input.Title) || input.Title.Length > 120)
        {
            return Refusal.Invalid("title", SetupSentences.TitleHasToCharacters);
        }

        if (await db.Set<Domain.Records.Station>().AnyAsync(s => s.Code == code, cancellation))
        {
            return Refusal.Conflict(SetupSentences.ThereIsAStationAlready(code), RefusalCode.AlreadyExists);
        }

        var stamp = writes.Stamp(by);
        var station = new Domain.Records.Station(stamp.NewId(), code, input.Title.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        await writes.Book.AppendAsync(station.Id, "add-station", [station], cancellation);
        return Answer.Created(new StationAnswer(station.Code, station.Title));
    }
}
