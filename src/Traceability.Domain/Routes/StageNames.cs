using Traceability.Domain.Records;

namespace Traceability.Domain.Routes;

/// <summary>
/// What the routes in force call their stages, and in which order these come, for whoever speaks of stages without a part at hand.
/// </summary>
/// <param name="routes">The routes in force.</param>
public sealed class StageNames(IReadOnlyList<Route> routes)
{
    private static readonly string[] Flow = [PartKinds.FilmLot, PartKinds.Diaphragm, PartKinds.Capsule, PartKinds.BoardSet, PartKinds.Unit];

    /// <summary>The title of a stage, of any model without one; its code where no route has it any more.</summary>
    public string TitleOf(string? model, string kind, string? stage) =>
        stage is null
            ? ""
            : routes
                .Where(r => r.Kind == kind && (model is null || r.Model == model))
                .Select(r => r.Find(stage)?.Title)
                .FirstOrDefault(t => t is not null)
                ?? stage;

    /// <summary>The place of a stage in the flow of the work: film first, unit last, then as the route goes.</summary>
    public (int Kind, string Name, int Stage) PlaceOf(string? model, string kind, string stage)
    {
        var place = Array.IndexOf(Flow, kind);
        var index = routes
            .Where(r => r.Kind == kind && (model is null || r.Model == model))
            .Select(r => r.IndexOf(stage))
            .DefaultIfEmpty(-1)
            .Max();
        return (place < 0 ? Flow.Length : place, kind, index < 0 ? int.MaxValue : index);
    }
}
