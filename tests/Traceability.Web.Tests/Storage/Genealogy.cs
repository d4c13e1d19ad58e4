using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Http;

namespace Traceability.Web.Tests.Storage;

/// <summary>
/// One random step: fit an item somewhere, or take something out, some minutes after the step before (or in the same minute).
/// </summary>
public sealed record Move(int Parent, int Item, bool Remove, int MinutesLater);

/// <summary>
/// Some parts and lots that are fitted into one another and taken out again through the record book, without the routes' gates: any
/// genealogy that is a forest at every moment.
/// </summary>
internal sealed class Genealogy(IServiceProvider services, Dossier pattern, IReadOnlyList<Guid> lots)
{
    public const int PartCount = 7;
    public const int LotCount = 3;

    private readonly RecordBook book = services.GetRequiredService<RecordBook>();
    private readonly TimeProvider clock = services.GetRequiredService<TimeProvider>();
    private readonly List<Attempt> attempts = [];
    private readonly List<Fitting> present = [];

    public IReadOnlyList<Guid> Parts => attempts.ConvertAll(a => a.PartId);

    /// <summary>The moment of the last step.</summary>
    public DateTimeOffset Now { get; private set; } = new(2026, 1, 5, 8, 0, 0, TimeSpan.Zero);

    public List<DateTimeOffset> Moments { get; } = [];

    public static async Task<IReadOnlyList<Guid>> LotsAsync(WorkshopContext db) =>
        await db.Set<Lot>().OrderBy(l => l.Number).Select(l => l.Id).Take(LotCount).ToListAsync();

    public Task StartAsync() =>
        WriteAsync(_ =>
        {
            for (var i = 0; i < PartCount; i++)
            {
                var part = pattern.Part with
                {
                    Id = Guid.CreateVersion7(),
                    Serial = $"G{Guid.NewGuid():N}",
                    OccurredAt = Now,
                    RecordedAt = clock.GetUtcNow(),
                };
                attempts.Add(new(Guid.CreateVersion7(), part.Id, "assemble", 1, "BENCH-1", null, part.By, Now, clock.GetUtcNow()));
                book.Append(book.Start(new(part, pattern.Route, [], PartPlacement.None)), "register-part", [part, attempts[i]]);
            }

            return Task.CompletedTask;
        });

    /// <summary>Makes the steps in one transaction, leaving out those that are not possible.</summary>
    public Task StepAsync(IEnumerable<Move> moves) =>
        WriteAsync(async cancellation =>
        {
            var open = await book.OpenAsync(Parts, cancellation);
            foreach (var move in moves)
            {
                Now = Now.AddMinutes(move.MinutesLater);
                if ((move.Remove ? TakeOut(move) : Fit(move)) is { } fact)
                {
                    book.Append(open[fact is Fitting f ? f.PartId : ((Removal)fact).PartId], "move", fact);
                    Moments.Add(Now);
                }
            }
        });

    private Fact? Fit(Move move)
    {
        var attempt = attempts[move.Parent];
        var child = move.Item < PartCount ? Parts[move.Item] : (Guid?)null;
        if (child is { } c && (present.Exists(f => f.ChildId == c) || IsInside(attempt.PartId, c)))
        {
            return null;
        }

        var lot = child is null ? lots[move.Item - PartCount] : (Guid?)null;
        var fitting = new Fitting(
            Guid.CreateVersion7(),
            attempt.PartId,
            attempt.Id,
            $"slot-{move.Item}",
            child,
            lot,
            null,
            attempt.By,
            Now,
            clock.GetUtcNow()
        );
        present.Add(fitting);
        return fitting;
    }

    private Removal? TakeOut(Move move)
    {
        if (present.Count == 0)
        {
            return null;
        }

        var fitting = present[move.Item % present.Count];
        present.Remove(fitting);
        return new(Guid.CreateVersion7(), fitting.PartId, fitting.Id, "taken out", fitting.By, Now, clock.GetUtcNow());
    }

    private bool IsInside(Guid part, Guid container) =>
        part == container || present.Find(f => f.ChildId == part) is { } above && IsInside(above.PartId, container);

    private async Task WriteAsync(Func<CancellationToken, Task> step)
    {
        var written = await book.WriteAsync(
            WriteRequest.Unkeyed,
            JsonRules.Options,
            async cancellation =>
            {
                await step(cancellation);
                return Answer.Ok(new { });
            },
            default
        );
        Assert.Equal(200, written.Status);
    }
}
