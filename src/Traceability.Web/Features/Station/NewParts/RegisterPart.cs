using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Codes;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.NewParts;

/// <summary>Starts the record of a part on the route in force, under its own serial or the next free one, in a carrier or not.</summary>
public sealed class RegisterPart(
    WorkshopContext db,
    Writes writes,
    WorkBench bench,
    RouteShelf routes,
    Domain.Values.WorkshopCalendar calendar
) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/parts", HandleAsync).For(Role.Builder).Is(Subjects.Parts, "registerPart", "Register a part on the route in force.");

    /// <summary>A part that begins.</summary>
    /// <param name="Kind" example="capsule">The kind of part.</param>
    /// <param name="Model" example="TARN-1">The model.</param>
    /// <param name="Serial" example="CS26-00012">Its serial; the next free one, when it is left out.</param>
    /// <param name="Carrier" example="JIG-07">The carrier that it is laid into.</param>
    /// <param name="OccurredAt" example="2026-11-25T08:05:00Z">When it happened; now, when it is left out.</param>
    public sealed record Input(string Kind, string Model, string? Serial = null, string? Carrier = null, DateTimeOffset? OccurredAt = null);

    public static Task<Results<Recorded<PartAnswer>, Problem>> HandleAsync(
        Input input,
        SignedIn signedIn,
        RegisterPart use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(input, signedIn.Actor, cancellation));

    public async Task<Answer<PartAnswer>> RunAsync(Input input, Actor actor, CancellationToken cancellation)
    {
        if (await bench.ProblemAsync(input.OccurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        if (input.Kind == PartKinds.FilmLot)
        {
            return Refusal.Invalid("kind", StationSentences.FilmLotIsReceivedElsewhere);
        }

        if (await db.DecisionAsync(NamedSubject.Of(SetupSort.Model, input.Model), cancellation) is { State: not SetupState.InUse } retired)
        {
            return Refusal.Conflict(StationSentences.ModelIsRetired(input.Model, retired.Reason), RefusalCode.Retired);
        }

        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        if (
            await routes.InForceAsync(db, input.Model, input.Kind, calendar.DayOf(stamp.OccurredAt), cancellation)
            is not var (routeId, route)
        )
        {
            return await NoRouteAsync(input, calendar.DayOf(stamp.OccurredAt), cancellation);
        }

        var (serial, carrier, badCode) = await CodesAsync(input, route, calendar.DayOf(stamp.OccurredAt), cancellation);
        if (badCode is not null)
        {
            return badCode;
        }

        var part = new Part(stamp.NewId(), serial, input.Kind, input.Model, routeId, stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        List<Fact> facts = [part];
        if (carrier is not null)
        {
            facts.AddRange(await PlaceAsync(part, carrier, stamp, cancellation));
        }

        var open = writes.Book.Start(new Dossier(part, route, [], PartPlacement.None));
        writes.Book.Append(open, "register-part", facts);
        return Answer.Created(bench.AnswerOf(open.Dossier));
    }

    private async Task<List<Fact>> PlaceAsync(Part part, string carrier, Stamp stamp, CancellationToken cancellation)
    {
        if (!await db.Set<Carrier>().AnyAsync(c => c.Code == carrier, cancellation))
        {
            var known = new Carrier(stamp.NewId(), carrier, "carrier", stamp.By, stamp.OccurredAt, stamp.RecordedAt);
            await writes.Book.AppendAsync(known.Id, "first-use-of-carrier", [known], cancellation);
        }

        return [new CarrierPlacement(stamp.NewId(), part.Id, carrier, stamp.By, stamp.OccurredAt, stamp.RecordedAt)];
    }

    private async Task<(string Serial, string? Carrier, Refusal? Refusal)> CodesAsync(
        Input input,
        Domain.Routes.Route route,
        DateOnly day,
        CancellationToken cancellation
    )
    {
        var serial = "";
        if (input.Serial is not null && !CodeText.TryRead(input.Serial, StationSentences.ASerial, out serial, out var badSerial))
        {
            return ("", null, Refusal.Invalid("serial", badSerial));
        }

        string? carrier = null;
        if (input.Carrier is not null && !CodeText.TryRead(input.Carrier, StationSentences.CarrierCode, out carrier, out var badCarrier))
        {
            return ("", null, Refusal.Invalid("carrier", badCarrier));
        }

        if (
            carrier is not null
            && await db.Set<Carrier>().Where(c => c.Code == carrier).Select(c => (Guid?)c.Id).FirstOrDefaultAsync(cancellation) is { } known
            && await db.DecisionAsync(known, cancellation) is { State: not SetupState.InUse } retired
        )
        {
            return ("", null, Refusal.Conflict(StationSentences.CarrierIsRetired(carrier, retired.Reason), RefusalCode.Retired));
        }

        if (input.Serial is not null && await db.Set<Part>().AnyAsync(p => p.Serial == serial, cancellation))
        {
            return ("", null, Refusal.Conflict(StationSentences.SerialIsTaken(serial), RefusalCode.AlreadyExists));
        }

        var occupant = carrier is null
            ? null
            : await db.Set<PartStanding>()
                .Where(s => s.CarrierCode == carrier)
                .Join(db.Set<Part>(), s => s.PartId, p => p.Id, (s, p) => p.Serial)
                .FirstOrDefaultAsync(cancellation);
        return occupant is null
            ? (input.Serial is null ? await NextSerialAsync(route.SerialPrefix, day.Year, cancellation) : serial!, carrier, null)
            : ("", null, Refusal.Conflict(StationSentences.CarrierIsFull(carrier, occupant), RefusalCode.CarrierFull));
    }

    /// <summary>
    /// The advisory lock lets two registrations of a kind take their numbers one after the other; it ends with the transaction.
    /// </summary>
    private async Task<string> NextSerialAsync(string prefix, int year, CancellationToken cancellation)
    {
        var first = SerialNumbers.Propose(prefix, year, 1);
        var start = first[..(first.IndexOf('-', StringComparison.Ordinal) + 1)];
        await db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock(hashtext({start}))", cancellation);
        var last = await db.Set<Part>()
            .Where(p => p.Serial.StartsWith(start) && p.Serial.Length == first.Length)
            .MaxAsync(p => (string?)p.Serial, cancellation);
        var count =
            last is not null && int.TryParse(last.AsSpan(start.Length), CultureInfo.InvariantCulture, out var taken) ? taken + 1 : 1;
        return SerialNumbers.Propose(prefix, year, count);
    }

    private async Task<Answer<PartAnswer>> NoRouteAsync(Input input, DateOnly day, CancellationToken cancellation)
    {
        if (await RouteShelf.FirstDayAsync(db, input.Model, input.Kind, cancellation) is { } first && first > day)
        {
            var (said, asked) = (Domain.Values.WorkshopCalendar.Say(first), Domain.Values.WorkshopCalendar.Say(day));
            return Refusal.Invalid(
                input.OccurredAt is null ? "kind" : "occurredAt",
                StationSentences.RouteIsNotInForceYet(input.Kind, input.Model, said, asked)
            );
        }

        var known = await routes.AllOfferedAsync(db, calendar.DayOf(writes.Now), cancellation);
        return Refusal.Invalid(
            "kind",
            StationSentences.ThereIsNoRouteForKind(input.Kind, input.Model, string.Join(", ", known.Select(r => $"{r.Model}/{r.Kind}")))
        );
    }
}
