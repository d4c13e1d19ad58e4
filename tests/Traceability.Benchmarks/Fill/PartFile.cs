using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;

namespace Traceability.Benchmarks;

/// <summary>
/// One part while it is made: what is recorded goes to the rows, the ledger, the verdicts and the containments, as <see cref="RecordBook"/>
/// would write it.
/// </summary>
internal sealed class PartFile(Part part, FillRows rows, OrderedIds ids, bool told)
{
    private readonly LedgerHead head = new() { SubjectId = part.Id, Hash = LedgerChain.BeforeFirst };
    private readonly List<Containment> inside = [];

    public Part Part => part;

    /// <summary>When the last thing happened to it.</summary>
    public DateTimeOffset At { get; private set; } = part.OccurredAt;

    public string? CarrierCode { get; set; }

    public void Record(string command, IReadOnlyList<Fact> facts)
    {
        At = facts[^1].OccurredAt;
        rows.AddRange(facts);
        if (told)
        {
            rows.Add(LedgerChain.Next(head, command, facts) with { Id = ids.Next(At) });
        }
    }

    /// <summary>Notes what an attempt came to.</summary>
    public void Came(StageVerdict verdict) => rows.Add(verdict);

    /// <summary>Notes a fitting, and everything in a fitted part with it: inside this part from then on.</summary>
    public void Holds(Fitting fitting, PartFile? child)
    {
        inside.Add(
            new()
            {
                ContainerId = part.Id,
                FittingId = fitting.Id,
                ItemId = fitting.ItemId,
                ItemIsLot = child is null,
                Depth = 1,
                PresentFrom = fitting.OccurredAt,
            }
        );
        foreach (var c in child?.inside ?? [])
        {
            inside.Add(
                new()
                {
                    ContainerId = part.Id,
                    FittingId = c.FittingId,
                    ItemId = c.ItemId,
                    ItemIsLot = c.ItemIsLot,
                    Depth = c.Depth + 1,
                    PresentFrom = c.PresentFrom > fitting.OccurredAt ? c.PresentFrom : fitting.OccurredAt,
                }
            );
        }
    }

    /// <summary>Ends the file with where the part stands.</summary>
    public void Close(PartState state, string? stage = null, Guid? fittedIn = null)
    {
        rows.Add(head);
        rows.AddRange(inside);
        rows.Add(
            new PartStanding
            {
                PartId = part.Id,
                RouteId = part.RouteId,
                State = Words.Of(state),
                Stage = stage,
                Finished = stage is null,
                FittedInId = fittedIn,
                ChangedAt = At,
            }
        );
    }
}
