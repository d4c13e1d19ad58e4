using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Records;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Overview;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Parts.Structure;

/// <summary>Something fitted at a position: a part (with what is inside it) or some of a lot; present, or removed and when.</summary>
public sealed record FittedItem(
    string Position,
    string Kind,
    string? Serial,
    string? Lot,
    string? Model,
    string? Supplier,
    string? SupplierLot,
    decimal? Quantity,
    bool Present,
    DateTimeOffset FittedAt,
    DateTimeOffset? RemovedAt,
    string? RemovedBecause,
    IReadOnlyList<FittedItem> Inside
);

/// <summary>The tree of what a part is, or was at a time, made of.</summary>
public sealed class ReadMadeOf(DossierReader dossiers, InsideQuery insides) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapGet("/parts/{serial}/made-of", HandleAsync)
            .Is(Subjects.Parts, "readMadeOf", "The tree of fitted parts and lots, now or as of a time.");

    public sealed record Output(string Serial, string Kind, string Model, DateTimeOffset? AsOf, IReadOnlyList<FittedItem> Inside);

    public static async Task<Results<Ok<Output>, Problem>> HandleAsync(
        string serial,
        ReadMadeOf use,
        CancellationToken cancellation,
        DateTimeOffset? asOf = null
    ) => await use.RunAsync(serial, asOf?.ToUniversalTime(), cancellation) is { } tree ? TypedResults.Ok(tree) : ReadPart.Unknown(serial);

    /// <summary>The tree, or null when there is no such part.</summary>
    public async Task<Output?> RunAsync(string serial, DateTimeOffset? asOf, CancellationToken cancellation)
    {
        if (await ReadPart.FindAsync(serial, dossiers, cancellation) is not { } dossier)
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
