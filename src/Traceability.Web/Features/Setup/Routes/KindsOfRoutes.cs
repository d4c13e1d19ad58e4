using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Routes;

/// <summary>Refuses a kind or model that nothing here has: a list kept to it would be empty for no reason that anybody sees.</summary>
public sealed class KindsOfRoutes(WorkshopContext db, KindsQuery kinds, RouteShelf routes, WorkshopCalendar calendar, Writes writes)
{
    private static readonly string[] OfTheGates =
    [
        PartKinds.FilmLot,
        PartKinds.Diaphragm,
        PartKinds.Capsule,
        PartKinds.BoardSet,
        PartKinds.Unit,
    ];

    /// <summary>What is wrong with a kind of part, if anything.</summary>
    public async Task<Refusal?> PartAsync(string? kind, CancellationToken cancellation) =>
        kind is null || OfTheGates.Contains(kind)
            ? null
            : Unknown(
                "kind",
                kind,
                [.. OfTheGates.Union(await db.Set<RouteRevision>().Select(r => r.Kind).Distinct().ToListAsync(cancellation))]
            );

    /// <summary>What is wrong with a model, if anything.</summary>
    public async Task<Refusal?> ModelAsync(string? model, CancellationToken cancellation) =>
        model is null
            ? null
            : Unknown("model", model, await db.Set<RouteRevision>().Select(r => r.Model).Distinct().Order().ToListAsync(cancellation));

    /// <summary>What is wrong with a kind of lot, if anything: one is known when a route asks for it or a lot of it was received.</summary>
    public async Task<Refusal?> LotAsync(string field, string? kind, CancellationToken cancellation)
    {
        if (kind is null)
        {
            return null;
        }

        var received = (await kinds.OfAsync(KindOf.Lot, cancellation)).Select(k => k.Code);
        var asked = (await routes.AllInForceAsync(db, calendar.DayOf(writes.Now), cancellation))
            .SelectMany(r => r.Stages)
            .SelectMany(s => s.Slots)
            .Select(s => s.LotKind);
        return Unknown(
            field,
            kind,
            [.. received.Union(asked.OfType<string>()).Append(Lot.FilmKind).Distinct().Order(StringComparer.Ordinal)]
        );
    }

    private static Refusal? Unknown(string field, string given, IReadOnlyCollection<string> known) =>
        known.Contains(given) ? null : Refusal.Invalid(field, SharedSentences.IsNotKnownHere(field, given, string.Join(", ", known)));
}
