using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Routes.Files;
using Traceability.Domain.Stages;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Setup.TakingBack;

/// <summary>Says what is of a kind, and which routes name it.</summary>
public sealed class KindDependents(WorkshopContext db)
{
    private const int MostNamed = 5;

    /// <summary>What depends on a kind, in words.</summary>
    public async Task<IReadOnlyList<string>> RunAsync(KindOf of, string code, CancellationToken cancellation)
    {
        var things = of switch
        {
            KindOf.Lot => db.Kept<Lot>().Where(l => l.Kind == code).Select(l => l.Number),
            KindOf.Instrument => db.Kept<Instrument>().Where(i => i.Kind == code).Select(i => i.Code),
            KindOf.Part => db.Set<Part>().Where(p => p.Kind == code).Select(p => p.Serial),
            KindOf.Qualification => db.Set<QualificationGrant>()
                .Where(q => q.Code == code)
                .Join(db.Set<Person>(), q => q.PersonId, p => p.Id, (_, p) => p.Badge)
                .Distinct(),
            KindOf.Finding => db.Set<ReturnFinding>()
                .Where(f => f.Code == code)
                .Select(f => f.PartId)
                .Union(db.Set<Nonconformity>().Where(n => n.Code == code).Select(n => n.PartId))
                .Join(db.Set<Part>(), id => id, p => p.Id, (_, p) => p.Serial),
            _ => db.Set<Part>().Where(_ => false).Select(p => p.Serial),
        };
        var count = await things.CountAsync(cancellation);
        var first = await things.OrderBy(t => t).Take(MostNamed).ToListAsync(cancellation);
        var routes = await RoutesAsync(of, code, cancellation);
        return
        [
            .. count == 0 ? [] : new[] { TakingBackSentences.ThingsAreOfIt(count, Listed(first, count)) },
            .. routes.Count == 0 ? [] : new[] { TakingBackSentences.RoutesNameIt(routes.Count, Listed(routes, routes.Count)) },
        ];
    }

    private static string Listed(IEnumerable<string> names, int count) =>
        string.Join(", ", names.Take(MostNamed)) + (count > MostNamed ? " ..." : "");

    /// <summary>The latest revision of every route is read, for a kind may stand in a proposal as well.</summary>
    private async Task<IReadOnlyList<string>> RoutesAsync(KindOf of, string code, CancellationToken cancellation)
    {
        var texts = await db.Set<RouteRevision>()
            .Where(r => r.Text.Contains(code))
            .Select(r => new
            {
                r.Model,
                r.Kind,
                r.Revision,
                r.Text,
            })
            .ToListAsync(cancellation);
        return
        [
            .. texts
                .Where(r => Names(RouteText.Read(r.Text, StageMethods.Requirements), of, code))
                .Select(r => $"{r.Model}/{r.Kind} {r.Revision}")
                .Order(StringComparer.Ordinal),
        ];
    }

    private static bool Names(RouteReading read, KindOf of, string code) =>
        of switch
        {
            KindOf.Lot => read.Named.Any(k => k.Sort == KindSort.Lot && k.Code == code),
            KindOf.Part => read.Named.Any(k => k.Sort is KindSort.Part or KindSort.Made && k.Code == code),
            KindOf.Instrument => read.Named.Any(k => k.Sort == KindSort.Instrument && k.Code == code),
            KindOf.Qualification => read.Route?.Stages.Any(s => s.Qualification == code) == true,
            _ => false,
        };
}
