using CsCheck;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Traceability.Domain.Records;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Tests.Storage;

[Trait("Category", "Storage")]
public sealed class ClosureTests(Workshop workshop) : IClassFixture<Workshop>
{
    private const int MovesInOneTransaction = 3;

    private static readonly Gen<Move[]> Moves = Gen.Select(
        Gen.Int[0, Genealogy.PartCount - 1],
        Gen.Int[0, Genealogy.PartCount + Genealogy.LotCount - 1],
        Gen.Int[0, 3],
        Gen.Int[0, 2],
        (parent, item, dice, minutes) => new Move(parent, item, Remove: dice == 0, minutes)
    ).Array[10, 40];

    // $1 the parts, $2 the moments; both ways of saying what was inside at a moment, less what they agree on
    private const string Disagreements = """
        with recursive moment as (select unnest($2::timestamptz[]) as at),
        walk as (
            select m.at, f.part_id as container_id, f.id as fitting_id, coalesce(f.child_id, f.lot_id) as item_id, 1 as depth
            from moment m join fittings f on f.part_id = any($1) and f.occurred_at <= m.at
            where not exists (select from removals r where r.fitting_id = f.id and r.occurred_at <= m.at)
            union all
            select w.at, w.container_id, f.id, coalesce(f.child_id, f.lot_id), w.depth + 1
            from walk w join fittings f on f.part_id = w.item_id and f.occurred_at <= w.at
            where not exists (select from removals r where r.fitting_id = f.id and r.occurred_at <= w.at)
        ),
        kept as (
            select m.at, c.container_id, c.fitting_id, c.item_id, c.depth
            from moment m join containments c on c.container_id = any($1) and c.present_from <= m.at and (c.present_until is null
                or c.present_until > m.at)
        )
        select count(*) from ((table walk except table kept) union all (table kept except table walk)) d
        """;

    [Fact]
    public async Task What_is_kept_of_any_genealogy_is_what_walking_the_fittings_finds_now_and_at_every_past_moment()
    {
        var serial = await workshop.RegisterAsync("unit");
        var deepest = 0;
        await Moves.SampleAsync(
            async moves =>
            {
                await using var scope = workshop.Services.CreateAsyncScope();
                var db = scope.ServiceProvider.GetRequiredService<WorkshopContext>();
                var dossiers = scope.ServiceProvider.GetRequiredService<DossierReader>();
                var pattern = (await dossiers.LoadAsync((await dossiers.FindAsync(serial, default))!.Value, default))!;
                var genealogy = new Genealogy(scope.ServiceProvider, pattern, await Genealogy.LotsAsync(db));
                await genealogy.StartAsync();
                foreach (var some in moves.Chunk(MovesInOneTransaction))
                {
                    await genealogy.StepAsync(some);
                }

                deepest = Math.Max(deepest, await CompareWithWalkAsync(db, genealogy));
                await CompareWithSqlAsync(genealogy);
            },
            iter: 40,
            threads: 1
        );
        Assert.True(deepest >= 4, $"the genealogies went only {deepest} deep");
    }

    private static async Task<int> CompareWithWalkAsync(WorkshopContext db, Genealogy genealogy)
    {
        var parts = genealogy.Parts;
        var fittings = await db.Set<Fitting>().AsNoTracking().Where(f => parts.Contains(f.PartId)).ToListAsync();
        var ids = fittings.ConvertAll(f => f.Id);
        var removals = await db.Set<Removal>()
            .AsNoTracking()
            .Where(r => ids.Contains(r.FittingId))
            .ToDictionaryAsync(r => r.FittingId, r => r.OccurredAt);
        var kept = await db.Set<Containment>().AsNoTracking().Where(c => parts.Contains(c.ContainerId)).ToListAsync();
        Assert.Equal(Lines(FittingWalk.Containments(fittings, removals)), Lines(kept));
        return kept.Select(c => c.Depth).DefaultIfEmpty(0).Max();
    }

    private async Task CompareWithSqlAsync(Genealogy genealogy)
    {
        await using var door = BackDoor.Of(workshop);
        var moments = genealogy.Moments.Append(genealogy.Now.AddDays(1)).Distinct().ToArray();
        Assert.Equal(0, await door.AskAsync<long>(Disagreements, genealogy.Parts.ToArray(), moments));
    }

    private static List<string> Lines(IEnumerable<Containment> rows) =>
        [
            .. rows.Select(c => $"{c.ContainerId} {c.FittingId} {c.ItemId} {c.ItemIsLot} {c.Depth} {c.PresentFrom:u} {c.PresentUntil:u}")
                .Order(StringComparer.Ordinal),
        ];
}
