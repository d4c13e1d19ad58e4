using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>
/// Supersedes a wrong reading; both stay visible. What was computed from it is judged anew, in its own attempt, in later ones, and in the
/// parts that contain it; a verdict that changes raises a nonconformity of its own.
/// </summary>
public sealed class CorrectReading(WorkshopContext db, Writes writes, WorkBench bench, GateContexts contexts, JudgedOnQuery judgedOn)
    : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/readings/{id:guid}/corrections", HandleAsync)
            .For(Role.Builder, Role.Quality)
            .Is(Subjects.Attempts, "correctReading", "Supersede a wrong reading; both stay visible.");

    private readonly Dictionary<Guid, JudgedOn> on = [];

    /// <summary>The right value.</summary>
    /// <param name="Value" example="41.20">The value in the reading's unit, with all its digits.</param>
    /// <param name="Reason" example="two digits were exchanged">Why the reading was wrong.</param>
    /// <param name="OccurredAt" example="2026-11-25T08:05:00Z">When it happened; now, when it is left out.</param>
    public sealed record Input(NumberText Value, string Reason, DateTimeOffset? OccurredAt = null);

    /// <summary>The correction and what it changed.</summary>
    /// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c04">The correction's id.</param>
    /// <param name="Serial" example="US26-00034">The part's serial.</param>
    /// <param name="Reading">The reading as it counts now.</param>
    /// <param name="VerdictBefore" example="pass">The attempt's verdict before; null while it is open.</param>
    /// <param name="VerdictAfter" example="fail">The attempt's verdict now; null while it is open.</param>
    /// <param name="Nonconformity">The nonconformity that a turned verdict raised, if any.</param>
    /// <param name="JudgedAnew">Other attempts that came out otherwise by the correction.</param>
    public sealed record Output(
        Guid Id,
        string Serial,
        ReadingAnswer Reading,
        Verdict? VerdictBefore,
        Verdict? VerdictAfter,
        NonconformityAnswer? Nonconformity,
        IReadOnlyList<JudgedAnewAnswer> JudgedAnew
    );

    /// <param name="id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c02">The reading.</param>
    public static Task<Results<Recorded<Output>, Problem>> HandleAsync(
        Guid id,
        Input input,
        SignedIn signedIn,
        CorrectReading use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(id, input, signedIn.Actor, cancellation));

    public async Task<Answer<Output>> RunAsync(Guid readingId, Input input, Actor actor, CancellationToken cancellation)
    {
        if (!EnteredDecimal.TryParseReading(input.Value.Text, out var number, out var badNumber))
        {
            return Refusal.Invalid("value", badNumber);
        }

        if (await bench.ProblemAsync(input.OccurredAt, null, actor, cancellation) is { } problem)
        {
            return problem;
        }

        if (await db.Set<Reading>().AsNoTracking().FirstOrDefaultAsync(r => r.Id == readingId, cancellation) is not { } reading)
        {
            return Refusal.NotFound(StationSentences.ThereIsNoReading(readingId));
        }

        on.Clear();
        var (part, containers) = await OpenWithContainersAsync(reading.PartId, cancellation);
        await ReadJudgedOnAsync(part.Dossier, new Dictionary<Guid, Dossier>(), reading.AttemptId, cancellation);
        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var decision = Readings.Correct(
            part.Dossier,
            readingId,
            number,
            input.Reason,
            contexts.At(stamp.OccurredAt, actor),
            a => on[a.Id],
            stamp
        );
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        writes.Book.Append(part, "correct-reading", decision.Facts);
        var corrected = decision.Value!;
        var judged = corrected.Later.ToList();
        return await JudgeContainersAsync(corrected.Onwards, part, containers, judged, cancellation) is { } unreachable
            ? unreachable
            : Answer.Created(
                new Output(
                    corrected.Correction.Id,
                    part.Dossier.Part.Serial,
                    ReadingAnswer.Of(part.Dossier.Attempts.SelectMany(a => a.Readings).First(r => r.Reading.Id == readingId)),
                    corrected.VerdictBefore,
                    corrected.VerdictAfter,
                    NonconformityAnswer.Of(corrected.Nonconformity),
                    [.. judged.Select(JudgedAnewAnswer.Of)]
                )
            );
    }

    /// <summary>Carries the correction on to every part that this one is or was inside, from the inside out.</summary>
    private async Task<Refusal?> JudgeContainersAsync(
        JudgeAnew? onwards,
        OpenPart part,
        IReadOnlyList<OpenPart> containers,
        List<JudgedAnew> judged,
        CancellationToken cancellation
    )
    {
        var known = new Dictionary<Guid, Dossier> { [part.Dossier.Part.Id] = part.Dossier };
        foreach (var outer in onwards is null ? [] : containers)
        {
            await ReadJudgedOnAsync(outer.Dossier, known, null, cancellation);
            var decision = onwards!.Reached(outer.Dossier);
            if (decision.Refusal is { } refusal)
            {
                return refusal;
            }

            if (decision.Facts.Count > 0)
            {
                writes.Book.Append(outer, "judge-anew", decision.Facts);
                judged.AddRange(decision.Value!);
            }

            known[outer.Dossier.Part.Id] = outer.Dossier;
        }

        return null;
    }

    /// <summary>Reads what the attempts that a correction may reach were judged on.</summary>
    private async Task ReadJudgedOnAsync(
        Dossier dossier,
        IReadOnlyDictionary<Guid, Dossier> known,
        Guid? own,
        CancellationToken cancellation
    )
    {
        foreach (
            var attempt in JudgeAnew.MayReach(dossier).Concat(dossier.Attempts.Where(a => a.Id == own && a.Closed)).DistinctBy(a => a.Id)
        )
        {
            on[attempt.Id] = await judgedOn.AsItCountsNowAsync(dossier, attempt, known, cancellation);
        }
    }

    /// <summary>Locks the part together with every part that it is or was inside, the nearest first.</summary>
    private async Task<(OpenPart Part, IReadOnlyList<OpenPart> Containers)> OpenWithContainersAsync(
        Guid partId,
        CancellationToken cancellation
    )
    {
        for (var before = await ContainersAsync(partId, cancellation); ; )
        {
            var open = await writes.Book.OpenAsync([partId, .. before], cancellation);

            // Somebody may have fitted it elsewhere while the locks were awaited.
            var now = await ContainersAsync(partId, cancellation);
            if (now.Except(before).Any())
            {
                before = now;
                continue;
            }

            return (open[partId], [.. now.Select(id => open[id])]);
        }
    }

    private async Task<List<Guid>> ContainersAsync(Guid partId, CancellationToken cancellation) =>
        await db.Set<Containment>()
            .AsNoTracking()
            .Where(c => c.ItemId == partId && !c.ItemIsLot)
            .GroupBy(c => c.ContainerId)
            .Select(g => new { Id = g.Key, Depth = g.Max(c => c.Depth) })
            .OrderBy(c => c.Depth)
            .ThenBy(c => c.Id)
            .Select(c => c.Id)
            .ToListAsync(cancellation);
}
