using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Persistence.Queries;

/// <summary>
/// A kind in one of the workshop's lists. It was entered there, or it came by use: something of the kind was entered through the interface
/// for programs, which keeps taking any kind.
/// </summary>
public sealed record ListedKind(KindOf Of, string Code, string Title, bool ByUse, SetupDecision? Decision)
{
    /// <summary>True when it is offered to be chosen.</summary>
    public bool Offered => Decision is null;
}

/// <summary>The workshop's lists of kinds: what was entered, what is in use, and what the program itself knows.</summary>
public sealed class KindsQuery(WorkshopContext db)
{
    private static readonly string[] OwnParts =
    [
        PartKinds.FilmLot,
        PartKinds.Diaphragm,
        PartKinds.Capsule,
        PartKinds.BoardSet,
        PartKinds.Unit,
    ];

    private static readonly string[] OwnFindings = [.. NonconformityCodes.OfReadings, NonconformityCodes.FindingAfterCorrection];

    /// <summary>A list, by code; without what was taken back as a mistake.</summary>
    public async Task<IReadOnlyList<ListedKind>> OfAsync(KindOf of, CancellationToken cancellation)
    {
        var entered = await db.Set<WorkshopKind>()
            .AsNoTracking()
            .Where(k => k.Of == of)
            .ToDictionaryAsync(k => k.Code, k => k.Title, cancellation);
        var setAside = await db.SetAsideAsync(SetupSort.Kind, cancellation);
        var used = await Used(of).Distinct().ToListAsync(cancellation);
        return
        [
            .. entered
                .Keys.Union(used)
                .Union(OwnOf(of))
                .Select(code => new ListedKind(
                    of,
                    code,
                    entered.GetValueOrDefault(code, code),
                    !entered.ContainsKey(code),
                    setAside.GetValueOrDefault(WorkshopKind.SubjectOf(of, code))
                ))
                .Where(k => k.Decision?.State != SetupState.Mistake)
                .OrderBy(k => k.Code, StringComparer.Ordinal),
        ];
    }

    /// <summary>What the workshop has of a kind, as codes of kinds that something was entered under.</summary>
    private IQueryable<string> Used(KindOf of) =>
        of switch
        {
            KindOf.Lot => db.Kept<Lot>().Select(l => l.Kind),
            KindOf.Part => db.Set<RouteRevision>().Select(r => r.Kind),
            KindOf.Instrument => db.Kept<Instrument>().Select(i => i.Kind),
            KindOf.Qualification => db.Set<QualificationGrant>().Select(q => q.Code),
            KindOf.Finding => db.Set<ReturnFinding>()
                .Select(f => f.Code)
                .Union(db.Set<Nonconformity>().Where(n => !OwnFindings.Contains(n.Code)).Select(n => n.Code)),
            _ => db.Set<WorkshopKind>().Where(k => k.Of == of).Select(k => k.Code),
        };

    private static string[] OwnOf(KindOf of) =>
        of switch
        {
            KindOf.Lot => [Lot.FilmKind],
            KindOf.Part => OwnParts,
            _ => [],
        };
}
