using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Codes;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Setup.TakingBack;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Stations;

/// <summary>Makes a bench or cabinet known.</summary>
public sealed class AddStation(FindThing things, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/stations", HandleAsync).For(Role.Lead).Is(Subjects.Stations, "addStation", "Add a station.");

    /// <summary>A new bench or cabinet.</summary>
    /// <param name="Code" example="PLATE-1">Its code, as its label will say it: capital letters, digits and hyphens.</param>
    /// <param name="Title" example="Hot plate 1">What it is, at most 120 characters.</param>
    public sealed record Input(string Code, string Title);

    public static Task<Results<Recorded<ListStations.StationAnswer>, Problem>> HandleAsync(
        Input input,
        SignedIn signedIn,
        AddStation use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(input, signedIn.Actor.PersonId, cancellation));

    public async Task<Answer<ListStations.StationAnswer>> RunAsync(Input input, Guid by, CancellationToken cancellation)
    {
        if (!CodeText.TryRead(input.Code, SetupSentences.StationCode, out var code, out var bad))
        {
            return Refusal.Invalid("code", bad);
        }

        if (string.IsNullOrWhiteSpace(input.Title) || input.Title.Length > 120)
        {
            return Refusal.Invalid("title", SetupSentences.TitleHasToCharacters);
        }

        if ((await things.RunAsync(SetupSort.Station, code, null, cancellation)).Thing is { } taken)
        {
            return Refusal.Conflict(taken.TakenWords ?? SetupSentences.ThereIsAStationAlready(code), RefusalCode.AlreadyExists);
        }

        var stamp = writes.Stamp(by);
        var station = new Domain.Records.Station(stamp.NewId(), code, input.Title.Trim(), stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        await writes.Book.AppendAsync(station.Id, "add-station", [station], cancellation);
        return Answer.Created(new ListStations.StationAnswer(station.Code, station.Title));
    }
}
