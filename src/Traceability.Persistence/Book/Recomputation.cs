using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages;
using Traceability.Domain.Stages.Methods;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Persistence.Book;

/// <summary>
/// What recomputing came to: attempts judged again, those of an older version of their method, and what came out otherwise.
/// </summary>
public sealed record Recomputed(int Judged, int OlderMethod, IReadOnlyList<string> Differences);

/// <summary>
/// Judges every closed attempt again, from the readings, files and fittings that it was judged on then, and says where a computed value or
/// a finding that failed it comes out otherwise; and, where readings were corrected since, from those. Facts are not mended: a difference
/// means that a method changed without its version, or a row was tampered with.
/// </summary>
public sealed class Recomputation(WorkshopContext db, DossierReader dossiers)
{
    private const int Batch = 100;

    private readonly JudgedOnQuery judgedOn = new(db, dossiers);

    /// <summary>Judges everything again.</summary>
    public async Task<Recomputed> RunAsync(IProgress<(int Done, int All)>? progress, CancellationToken cancellation)
    {
        var total = new Recomputed(0, 0, []);
        var ids = await db.Set<Part>().OrderBy(p => p.Id).Select(p => p.Id).ToListAsync(cancellation);
        for (var i = 0; i < ids.Count; i += Batch)
        {
            var unreadable = new List<string>();
            foreach (
                var dossier in (await DossiersOneByOne.LoadAsync(dossiers, [.. ids.Skip(i).Take(Batch)], unreadable, cancellation)).Values
            )
            {
                total = await AddAsync(total, dossier, cancellation);
            }

            total = total with { Differences = [.. total.Differences, .. unreadable] };

            progress?.Report((Math.Min(i + Batch, ids.Count), ids.Count));
        }

        return total;
    }

    private async Task<Recomputed> AddAsync(Recomputed total, Dossier dossier, CancellationToken cancellation)
    {
        foreach (var attempt in dossier.Attempts.Where(a => a.Closed))
        {
            if (StageMethods.Find(attempt.Ending!.Method ?? "") is not { } method || method.Version != attempt.Ending.MethodVersion)
            {
                total = total with { OlderMethod = total.OlderMethod + 1 };
                continue;
            }

            var differences = await SafelyAsync(dossier, attempt, method, cancellation);
            total = new(total.Judged + 1, total.OlderMethod, [.. total.Differences, .. differences]);
        }

        return total;
    }

    /// <summary>
    /// What was tampered with may be such that nothing can be judged on it at all: a doubled reading, a file that is gone. That is said,
    /// and the others are judged.
    /// </summary>
    private async Task<List<string>> SafelyAsync(Dossier dossier, AttemptView attempt, StageMethod method, CancellationToken cancellation)
    {
        try
        {
            return await DifferencesAsync(dossier, attempt, method, cancellation);
        }
        catch (Exception e) when (DossiersOneByOne.IsOfTheFacts(e))
        {
            return [$"{dossier.Part.Serial} {attempt.Stage} {attempt.Attempt.Number}: cannot be judged again: {e.Message}"];
        }
    }

    private async Task<List<string>> DifferencesAsync(
        Dossier dossier,
        AttemptView attempt,
        StageMethod method,
        CancellationToken cancellation
    )
    {
        var (ending, stage) = (attempt.Ending!, dossier.Route.Find(attempt.Stage)!);
        var then = dossier.AsOf(ending.RecordedAt);
        var on = await judgedOn.AsRecordedAsync(dossier, attempt, cancellation);
        var outcome = method.Judge(
            StageInputs.Of(then, then.Attempts.First(a => a.Id == attempt.Id), stage, on.Evidence, on.Context, ending.OccurredAt)
        );
        var what = $"{dossier.Part.Serial} {attempt.Stage} {attempt.Attempt.Number}";
        if (outcome.Unreadable is { } unreadable)
        {
            return [$"{what}: {unreadable}"];
        }

        var stored = attempt
            .Readings.Where(r => r.Reading.Source == ReadingSource.Computed)
            .ToDictionary(r => r.Reading.Characteristic, r => r.Reading.Digits);
        var again = outcome.Computed.ToDictionary(c => c.Characteristic, c => c.Digits);
        List<string> differences =
        [
            .. stored
                .Keys.Union(again.Keys)
                .Where(name => stored.GetValueOrDefault(name) != again.GetValueOrDefault(name))
                .Select(name =>
                    $"{what}: {name} stored as {stored.GetValueOrDefault(name, "nothing")}, computed again"
                    + $" {again.GetValueOrDefault(name, "nothing")}"
                ),
            .. await AfterCorrectionsAsync(dossier, attempt, method, stage, what, cancellation),
        ];
        if (outcome.CountsFrom != ending.CountsFrom)
        {
            differences.Add(
                $"{what}: later clocks count from {ending.CountsFrom:O} as stored, from {outcome.CountsFrom:O} as computed again"
            );
        }

        if (outcome.Findings.Any(f => f.Fails) != ending.FailedByFinding)
        {
            differences.Add(
                $"{what}: {(ending.FailedByFinding ? "failed by a finding then, by none now" : "failed by no finding then, by one now")}"
            );
        }

        return differences;
    }

    /// <summary>
    /// What counts now of an attempt that a correction superseded something in: it must come out of the corrected readings.
    /// </summary>
    private async Task<IEnumerable<string>> AfterCorrectionsAsync(
        Dossier dossier,
        AttemptView attempt,
        StageMethod method,
        Stage stage,
        string what,
        CancellationToken cancellation
    )
    {
        if (attempt.Readings.All(r => r.Corrections.Count == 0))
        {
            return [];
        }

        var on = await judgedOn.AsItCountsNowAsync(dossier, attempt, new Dictionary<Guid, Dossier>(), cancellation);
        var outcome = method.Judge(StageInputs.Anew(dossier, attempt, stage, on.Evidence, on.Context));
        return outcome
            .Computed.Where(c => attempt.Reading(c.Characteristic) is { } counts && counts.Digits != c.Digits)
            .Select(c =>
                $"{what}: {c.Characteristic} counts as {attempt.Reading(c.Characteristic)!.Digits}, computed again from the corrected"
                + $" readings {c.Digits}"
            );
    }
}
