using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Parts.Structure;

/// <summary>The tree of what a part is, or was at a time, made of.</summary>
public sealed class ReadMadeOf(DossierReader dossiers, InsideQuery insides) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/parts/{serial}/made-of", HandleAsync)
            .Is(Subjects.Parts, "readMadeOf", "The tree of fitted parts and lots, now or as of a time.");

    /// <summary>What a part is made of.</summary>
    /// <param name="Serial" example="CD26-00034">The part's serial.</param>
    /// <param name="Kind" example="capsule">The kind of part.</param>
    /// <param name="Model" example="TARN-2">The model.</param>
    /// <param name="AsOf" example="2026-11-25T14:20:00Z">The time asked for; null for now.</param>
    /// <param name="Inside">What is fitted in it, what was removed too.</param>
    public sealed record Output(string Serial, string Kind, string Model, DateTimeOffset? AsOf, IReadOnlyList<FittedItem> Inside);

    /// <param name="serial" example="US26-00034">The part's serial, or the carrier that it lies in.</param>
    /// <param name="asOf" example="2026-11-25T14:20:00Z">As of this time; now, when it is left out.</param>
    public static async Task<Results<Ok<Output>, Problem>> HandleAsync(
        string serial,
        ReadMadeOf use,
        CancellationToken cancellation,
        DateTimeOffset? asOf = null
    ) => await use.RunAsync(serial, asOf?.ToUniversalTime(), cancellation) is { } tree ? TypedResults.Ok(tree) : PartLookup.Unknown(serial);

    /// <summary>The tree, or null when there is no such part.</summary>
    public async Task<Output?> RunAsync(string serial, DateTimeOffset? asOf, CancellationToken cancellation)
    {
        if (await PartLookup.FindAsync(serial, dossiers, cancellation) is not { } dossier)
        {
            return null;
        }

        var part = dossier.Part;
        return new(part.Serial, part.Kind, part.Model, asOf, Below(part.Id, asOf, await insides.RunAsync(part.Id, cancellation)));
    }

    private static IReadOnlyList<FittedItem> Below(Guid parent, DateTimeOffset? asOf, Inside inside) =>
        [.. inside.FittingsByParent[parent].Where(f => asOf is null || f.OccurredAt <= asOf).Select(f => ItemOf(f, asOf, inside))];

    private static FittedItem ItemOf(Fitting fitting, DateTimeOffset? asOf, Inside inside)
    {
        var removal = inside.RemovalByFitting.GetValueOrDefault(fitting.Id) is { } r && (asOf is null || r.OccurredAt <= asOf) ? r : null;
        var child = fitting.ChildId is { } childId ? inside.Parts[childId] : null;
        var lot = fitting.LotId is { } lotId ? inside.Lots[lotId] : null;
        return new(
            fitting.Position,
            child?.Kind ?? lot!.Kind,
            child?.Serial,
            lot?.Number,
            child?.Model,
            lot?.Supplier,
            lot?.SupplierLot,
            fitting.Quantity,
            removal is null,
            fitting.OccurredAt,
            removal?.OccurredAt,
            removal?.Reason,
            child is null ? [] : Below(child.Id, asOf, inside)
        );
    }
}
