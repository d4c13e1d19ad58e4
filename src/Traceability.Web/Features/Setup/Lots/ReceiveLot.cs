using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Codes;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Setup.TakingBack;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Lots;

/// <summary>Takes a lot in. It is quarantined until somebody releases it; a film lot starts on its own route.</summary>
public sealed partial class ReceiveLot(
    WorkshopContext db,
    Writes writes,
    FilmLotRoute filmRoute,
    FindThing things,
    WorkshopCalendar calendar
) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/lots", HandleAsync)
            .For(Role.Quality, Role.Importer)
            .Is(Subjects.Lots, "receiveLot", "Receive a lot into quarantine.");

    /// <summary>A lot that came.</summary>
    /// <param name="Kind" example="film">What it is a lot of: small letters, digits and hyphens.</param>
    /// <param name="Supplier" example="Film works">Who supplied it.</param>
    /// <param name="SupplierLot" example="L-4711">The supplier's own number.</param>
    /// <param name="Quantity" example="50">How much came, in Unit, above zero.</param>
    /// <param name="Unit" example="m">The unit of the quantity.</param>
    /// <param name="Number" example="FILM-0007">Its number here; the next free one, when left out.</param>
    /// <param name="ReceivedAt" example="2026-01-31T14:20:00Z">When it came; when it was recorded, when left out.</param>
    /// <param name="ExpiresAt" example="2027-01-31T00:00:00Z">From when on it may not be used.</param>
    /// <param name="Film">What the supplier's certificate says of a film; needed for one.</param>
    /// <param name="MixedAt" example="2026-01-31T14:20:00Z">When an adhesive was mixed.</param>
    /// <param name="PotLifeMinutes" example="90">How long it may be used after mixing, in minutes.</param>
    /// <param name="OccurredAt" example="2026-01-31T14:20:00Z">When it was taken in; now, when left out.</param>
    public sealed record Input(
        string Kind,
        string Supplier,
        string SupplierLot,
        decimal Quantity,
        string Unit,
        string? Number = null,
        DateTimeOffset? ReceivedAt = null,
        DateTimeOffset? ExpiresAt = null,
        FilmInput? Film = null,
        DateTimeOffset? MixedAt = null,
        int? PotLifeMinutes = null,
        DateTimeOffset? OccurredAt = null
    );

    public static Task<Results<Recorded<LotAnswer>, Problem>> HandleAsync(Input input, SignedIn signedIn, ReceiveLot use, Writes writes) =>
        writes.RecordAsync(cancellation => use.RunAsync(input, signedIn.Actor, cancellation));

    public async Task<Answer<LotAnswer>> RunAsync(Input input, Actor actor, CancellationToken cancellation)
    {
        if ((Problem(input) ?? Timing.Problem(input.OccurredAt, writes.Now, actor)) is { } problem)
        {
            return problem;
        }

        var number = "";
        if (input.Number is not null && !CodeText.TryRead(input.Number, SetupSentences.LotNumber, out number, out var bad))
        {
            return Refusal.Invalid("number", bad);
        }

        if (
            input.Number is not null
            && (
                await db.Set<Lot>().AnyAsync(l => l.Number == number, cancellation)
                || await db.Set<Part>().AnyAsync(p => p.Serial == number, cancellation)
            )
        )
        {
            var taken = (await things.RunAsync(SetupSort.Lot, number, null, cancellation)).Thing?.TakenWords;
            return Refusal.Conflict(taken ?? SetupSentences.LotNumberIsTaken(number), RefusalCode.AlreadyExists);
        }

        var received = input.ReceivedAt ?? input.OccurredAt ?? writes.Now;
        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var lot = new Lot(
            stamp.NewId(),
            input.Number is null ? await NextNumberAsync(cancellation) : number!,
            input.Kind,
            input.Supplier.Trim(),
            input.SupplierLot.Trim(),
            input.Quantity,
            input.Unit.Trim(),
            received,
            input.ExpiresAt,
            input.MixedAt,
            input.PotLifeMinutes,
            input.Film?.BaseThicknessUm,
            input.Film?.MetalThicknessNm,
            input.Film?.SheetResistanceOhm,
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        if (input.Kind != Lot.FilmKind || !await filmRoute.StartAsync(lot, stamp, cancellation))
        {
            await writes.Book.AppendAsync(lot.Id, "receive-lot", [lot], cancellation);
        }

        return Answer.Created(LotAnswer.Of(new LotStanding(lot, LotState.Quarantined, null, [])));
    }

    private Refusal? Problem(Input input) =>
        !KindPattern().IsMatch(input.Kind) ? Refusal.Invalid("kind", SetupSentences.KindOfLotIsSmallLetters)
        : Blank(input.Supplier, 120) ? Refusal.Invalid("supplier", SetupSentences.NameTheSupplier)
        : Blank(input.SupplierLot, 120) ? Refusal.Invalid("supplierLot", SetupSentences.NameTheSuppliersLot)
        : Blank(input.Unit, 20) ? Refusal.Invalid("unit", SetupSentences.NameTheUnitOfTheQuantity)
        : input.Quantity is <= 0 or > 1_000_000_000 ? Refusal.Invalid("quantity", SetupSentences.QuantityIsAboveZero)
        : input.Kind == Lot.FilmKind && input.Film is null ? Refusal.Invalid("film", SetupSentences.FilmLotNeedsFilm)
        : input.Film is { } f
        && (f.BaseThicknessUm is <= 0 or > 1000 || f.MetalThicknessNm is <= 0 or > 100_000 || f.SheetResistanceOhm is <= 0 or > 1_000_000)
            ? Refusal.Invalid("film", SetupSentences.FilmValuesAreAboveZero)
        : input.ReceivedAt > writes.Now + ClockSkew.Allowed ? Refusal.Invalid("receivedAt", SetupSentences.ReceivedAtLiesInTheFuture)
        : input.MixedAt is null != input.PotLifeMinutes is null
            ? Refusal.Invalid("potLifeMinutes", SetupSentences.MixedAtAndPotLifeMinutesBelongTogether)
        : input.PotLifeMinutes is <= 0 or > 100_000 ? Refusal.Invalid("potLifeMinutes", SetupSentences.PotLifeIsToMinutes)
        : null;

    private static bool Blank(string text, int most) => string.IsNullOrWhiteSpace(text) || text.Length > most;

    private async Task<string> NextNumberAsync(CancellationToken cancellation)
    {
        var first = SerialNumbers.Propose("L", calendar.DayOf(writes.Now).Year, 1);
        var start = first[..(first.IndexOf('-', StringComparison.Ordinal) + 1)];
        await db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock(hashtext({start}))", cancellation);
        var taken = await db.Set<Lot>().CountAsync(l => l.Number.StartsWith(start) && l.Number.Length == first.Length, cancellation);
        return SerialNumbers.Propose("L", calendar.DayOf(writes.Now).Year, taken + 1);
    }

    [GeneratedRegex("^[a-z][a-z0-9-]{1,39}$")]
    private static partial Regex KindPattern();
}
