using CsCheck;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Traceability.Domain.Records;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Tests.Storage;

[Trait("Category", "Storage")]
public sealed class TraceClosureTests(Workshop workshop) : IClassFixture<Workshop>
{
    /// <summary>Few items and many removals, so that things are taken out and fitted again.</summary>
    private static readonly Gen<Move[]> Moves = Gen.Select(
        Gen.Int[0, Genealogy.PartCount - 1],
        Gen.Int[0, Genealogy.PartCount + Genealogy.LotCount - 1],
        Gen.Int[0, 2],
        Gen.Int[0, 2],
        (parent, item, dice, minutes) => new Move(parent, item, Remove: dice == 0, minutes)
    ).Array[10, 40];

    [Fact]
    public async Task A_trace_of_any_lot_finds_what_walking_the_fittings_finds_now_and_at_every_past_moment()
    {
        var serial = await workshop.RegisterAsync("unit");
        int present = 0,
            removed = 0;
        await Moves.SampleAsync(
            async moves =>
            {
                await using var scope = workshop.Services.CreateAsyncScope();
                var db = scope.ServiceProvider.GetRequiredService<WorkshopContext>();
                var dossiers = scope.ServiceProvider.GetRequiredService<DossierReader>();
                var pattern = (await dossiers.LoadAsync((await dossiers.FindAsync(serial, default))!.Value, default))!;
                var lots = await Genealogy.LotsAsync(db);
                var genealogy = new Genealogy(scope.ServiceProvider, pattern, lots);
                await genealogy.StartAsync();
                await genealogy.StepAsync(moves);
                var parts = genealogy.Parts.ToHashSet();
                var fittings = await db.Set<Fitting>().AsNoTracking().Where(f => parts.Contains(f.PartId)).ToListAsync();
                var ids = fittings.ConvertAll(f => f.Id);
                var removals = await db.Set<Removal>()
                    .AsNoTracking()
                    .Where(r => ids.Contains(r.FittingId))
                    .ToDictionaryAsync(r => r.FittingId, r => r.OccurredAt);
                var query = new TraceQuery(db);
                foreach (var at in genealogy.Moments.Append(TraceQuery.End).Distinct())
                {
                    foreach (var lot in lots)
                    {
                        var rows = await query.RunAsync(
                            new(TraceKind.Lot, "", [lot], [], TraceQuery.Beginning, TraceQuery.End),
                            at,
                            null,
                            int.MaxValue,
                            default
                        );
                        var traced = rows.Where(r => parts.Contains(r.PartId) && r.Present).Select(r => r.PartId).ToHashSet();
                        Assert.Equal(parts.Where(p => Holds(p, lot, at, fittings, removals)).Order(), traced.Order());
                        present += traced.Count;
                        removed += rows.Count(r => parts.Contains(r.PartId) && !r.Present);
                        Assert.All(
                            rows.Where(r => !r.Present && parts.Contains(r.PartId)),
                            r => Assert.True(HeldBefore(r.PartId, lot, at, fittings, removals))
                        );
                    }
                }
            },
            iter: 15,
            threads: 1
        );
        Assert.True(present > 100 && removed > 20, $"only {present} present and {removed} removed were compared");
    }

    /// <summary>The recursive walk, written without the closure or its SQL: is the lot inside the part at that moment?</summary>
    private static bool Holds(
        Guid part,
        Guid lot,
        DateTimeOffset at,
        IReadOnlyList<Fitting> fittings,
        Dictionary<Guid, DateTimeOffset> removals
    ) =>
        fittings.Any(f =>
            f.PartId == part
            && f.OccurredAt <= at
            && !(removals.TryGetValue(f.Id, out var gone) && gone <= at)
            && (f.LotId == lot || f.ChildId is { } child && Holds(child, lot, at, fittings, removals))
        );

    /// <summary>Was it inside at some earlier moment, or fitted in it directly for no time at all?</summary>
    private static bool HeldBefore(
        Guid part,
        Guid lot,
        DateTimeOffset at,
        IReadOnlyList<Fitting> fittings,
        Dictionary<Guid, DateTimeOffset> removals
    ) =>
        fittings.Any(f => f.PartId == part && f.LotId == lot && f.OccurredAt <= at)
        || fittings.Select(f => f.OccurredAt).Where(m => m <= at).Distinct().Any(m => Holds(part, lot, m, fittings, removals));
}
