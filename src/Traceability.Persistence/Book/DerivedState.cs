using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Persistence.Book;

/// <summary>
/// Recomputes what is derived - standings, verdicts, containments and the fates of film - from the facts alone, and says where the tables
/// disagree. The containments are found by walking the fittings, another way than the one in which <see cref="Closure"/> keeps them.
/// Film is followed through all of these: while these are wrong and not mended, its fates are not looked at.
/// </summary>
public sealed class DerivedState(WorkshopContext db, DossierReader dossiers)
{
    private const int Batch = 200;

    /// <summary>Compares everything; with <paramref name="mend"/> the derived tables are brought into line with the facts.</summary>
    public async Task<IReadOnlyList<string>> CompareAsync(
        bool mend,
        IProgress<(int Done, int All)>? progress,
        CancellationToken cancellation
    )
    {
        var differences = new List<string>();
        var ids = await db.Set<Part>().OrderBy(p => p.Id).Select(p => p.Id).ToListAsync(cancellation);
        for (var i = 0; i < ids.Count; i += Batch)
        {
            await ComparePartsAsync([.. ids.Skip(i).Take(Batch)], differences, cancellation);
            progress?.Report((Math.Min(i + Batch, ids.Count), ids.Count));
            await FinishAsync(mend, cancellation);
        }

        await CompareContainmentsAsync(differences, cancellation);
        await FinishAsync(mend, cancellation);
        if (mend || differences.Count == 0)
        {
            await CompareFilmsAsync(mend, differences, cancellation);
        }

        return differences;
    }

    private async Task CompareFilmsAsync(bool mend, List<string> differences, CancellationToken cancellation)
    {
        foreach (var diaphragms in (await FilmFates.AllAsync(db, cancellation)).Chunk(Batch))
        {
            var found = await FilmFates.DifferencesAsync(db, diaphragms, cancellation);
            differences.AddRange(found);
            if (mend && found.Count > 0)
            {
                await FilmFates.MendAsync(db, diaphragms, cancellation);
            }
        }
    }

    private async Task FinishAsync(bool mend, CancellationToken cancellation)
    {
        if (mend)
        {
            await db.SaveChangesAsync(cancellation);
        }

        db.ChangeTracker.Clear();
    }

    private async Task ComparePartsAsync(Guid[] ids, List<string> differences, CancellationToken cancellation)
    {
        var kept = await db.Set<PartStanding>().Where(s => ids.Contains(s.PartId)).ToDictionaryAsync(s => s.PartId, cancellation);
        var verdicts = (await db.Set<StageVerdict>().Where(v => ids.Contains(v.PartId)).ToListAsync(cancellation)).ToLookup(v => v.PartId);
        var parents = await ParentsAsync(ids, cancellation);
        foreach (var (id, loaded) in await DossiersOneByOne.LoadAsync(dossiers, ids, differences, cancellation))
        {
            try
            {
                ComparePart(loaded, kept.GetValueOrDefault(id), [.. verdicts[id]], parents.GetValueOrDefault(id), differences);
            }
            catch (Exception e) when (DossiersOneByOne.IsOfTheFacts(e))
            {
                differences.Add($"{loaded.Part.Serial}: nothing can be derived from its facts: {e.Message}");
            }
        }
    }

    private void ComparePart(
        Dossier loaded,
        PartStanding? standing,
        IReadOnlyCollection<StageVerdict> verdicts,
        Part? parent,
        List<string> differences
    )
    {
        CompareVerdicts(verdicts, VerdictsOf.All(loaded), differences);
        var carrier = loaded.Facts.LastOrDefault(f => f is CarrierPlacement or CarrierRelease) is CarrierPlacement placed
            ? placed.CarrierCode
            : null;
        var dossier = loaded.With([], loaded.Around with { CarrierCode = carrier, FittedInSerial = parent?.Serial });
        var derived = new PartStanding
        {
            PartId = dossier.Part.Id,
            RouteId = dossier.Part.RouteId,
            State = "",
            FittedInId = parent?.Id,
        };
        StandingOf.Update(derived, dossier, loaded.Facts[^1].RecordedAt);
        if (standing is null)
        {
            differences.Add($"{dossier.Part.Serial} has no standing");
            db.Add(derived);
        }
        else if (Text(standing) != Text(derived))
        {
            differences.Add($"{dossier.Part.Serial}: kept {Text(standing)}, the facts say {Text(derived)}");
            standing.FittedInId = derived.FittedInId;
            StandingOf.Update(standing, dossier, standing.ChangedAt);
        }
    }

    private void CompareVerdicts(
        IReadOnlyCollection<StageVerdict> kept,
        IReadOnlyCollection<StageVerdict> derived,
        List<string> differences
    )
    {
        foreach (var wrong in kept.Except(derived))
        {
            differences.Add($"{wrong.Serial}: a verdict on {wrong.Stage} is kept that the facts do not give");
            db.Remove(wrong);
        }

        foreach (var right in derived.Except(kept))
        {
            if (db.Set<StageVerdict>().Local.FindEntry(right.AttemptId) is { } entry)
            {
                entry.State = EntityState.Modified;
                entry.CurrentValues.SetValues(right);
            }
            else
            {
                differences.Add($"{right.Serial} has no verdict on {right.Stage}");
                db.Add(right);
            }
        }
    }

    private async Task<Dictionary<Guid, Part>> ParentsAsync(Guid[] ids, CancellationToken cancellation) =>
        (
            await db.Set<Fitting>()
                .Where(f => f.ChildId != null && ids.Contains(f.ChildId.Value) && !db.Set<Removal>().Any(r => r.FittingId == f.Id))
                .Join(db.Set<Part>(), f => f.PartId, p => p.Id, (f, p) => new { f.ChildId, Parent = p })
                .ToListAsync(cancellation)
        ).ToDictionary(x => x.ChildId!.Value, x => x.Parent);

    private async Task CompareContainmentsAsync(List<string> differences, CancellationToken cancellation)
    {
        var fittings = await db.Set<Fitting>().AsNoTracking().ToListAsync(cancellation);
        var removals = await db.Set<Removal>().AsNoTracking().ToDictionaryAsync(r => r.FittingId, r => r.OccurredAt, cancellation);
        var expected = FittingWalk.Containments(fittings, removals).ToDictionary(Key);
        var kept = await db.Set<Containment>().ToDictionaryAsync(Key, cancellation);
        foreach (
            var (key, row) in expected.Where(e =>
                !kept.TryGetValue(e.Key, out var k) || k.PresentUntil != e.Value.PresentUntil || k.Depth != e.Value.Depth
            )
        )
        {
            differences.Add(
                $"containment of fitting {key.FittingId} in {key.ContainerId}:"
                    + $" {(kept.ContainsKey(key) ? "another end or depth" : "missing")}"
            );
            if (kept.TryGetValue(key, out var old))
            {
                db.Remove(old);
            }

            db.Add(row);
        }

        foreach (var (key, row) in kept.Where(k => !expected.ContainsKey(k.Key)))
        {
            differences.Add($"containment of fitting {key.FittingId} in {key.ContainerId}: no fact supports it");
            db.Remove(row);
        }
    }

    private static (Guid ContainerId, Guid FittingId, DateTimeOffset PresentFrom) Key(Containment c) =>
        (c.ContainerId, c.FittingId, c.PresentFrom);

    private static string Text(PartStanding s) =>
        $"(route {s.RouteId}, stage {s.Stage ?? "-"}, {s.State}, carrier {s.CarrierCode ?? "-"}, in {s.FittedInId?.ToString() ?? "-"},"
        + $" open {s.OpenAttemptId?.ToString() ?? "-"})";
}
