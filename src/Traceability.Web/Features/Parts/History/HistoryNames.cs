using Traceability.Domain.Records;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Parts.History;

/// <summary>The names that a history needs.</summary>
public sealed record HistoryNames(
    IReadOnlyDictionary<Guid, Who> People,
    IReadOnlyDictionary<Guid, Part> Parts,
    IReadOnlyDictionary<Guid, Lot> Lots,
    IReadOnlyDictionary<Guid, Fitting> Fittings
)
{
    /// <summary>A person.</summary>
    public Who Person(Guid id) => People.GetValueOrDefault(id, Who.Nobody);

    /// <summary>What was fitted: a serial or a lot number.</summary>
    public string ItemOf(Fitting fitting) => fitting.ChildId is { } child ? Parts[child].Serial : Lots[fitting.LotId!.Value].Number;
}
