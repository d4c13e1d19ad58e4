using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Work;

/// <summary>
/// When something may be said to have happened: now, or in the past for those who enter older records; never in the future.
/// </summary>
public static class Timing
{
    /// <summary>No record of a workshop's work is older than this; a time before it is a slip of the keyboard.</summary>
    public static readonly DateTimeOffset Earliest = new(1950, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Judges a stated time against the server's clock.</summary>
    public static Refusal? Problem(DateTimeOffset? stated, DateTimeOffset now, Actor actor) =>
        stated switch
        {
            null => null,
            { } t when t > now + ClockSkew.Allowed => Refusal.Invalid("occurredAt", RefusalTexts.OccurredInTheFuture(t, now)),
            { } t when t < Earliest => Refusal.Invalid("occurredAt", RefusalTexts.OccurredBeforeAnyRecord(t, Earliest)),
            { } t when t < now - ClockSkew.Allowed && !actor.Is(Role.Importer) => Refusal.Forbidden(
                RefusalTexts.OccurredInThePast(t),
                RefusalCode.PastNotAllowed
            ),
            _ => null,
        };

    /// <summary>
    /// Judges a stated time of what belongs to something that began earlier and still goes on. A machine keeps what it could not send, so
    /// the past is believed as far as the beginning.
    /// </summary>
    public static Refusal? ProblemInside(DateTimeOffset? stated, DateTimeOffset began, DateTimeOffset now) =>
        stated switch
        {
            { } t when t > now + ClockSkew.Allowed => Refusal.Invalid("occurredAt", RefusalTexts.OccurredInTheFuture(t, now)),
            { } t when t < began => Refusal.Conflict(RefusalTexts.OccurredBeforeItBegan(t, began), RefusalCode.OutOfOrder),
            _ => null,
        };

    /// <summary>A part's life runs forward: nothing may be said to have happened before the last thing recorded on it.</summary>
    public static Refusal? OutOfOrder(Dossier dossier, DateTimeOffset occurredAt)
    {
        var last = dossier
            .Facts.Where(f => f is Attempt or AttemptEnding or Removal or Disposition)
            .Select(f => f.OccurredAt)
            .DefaultIfEmpty(dossier.Part.OccurredAt)
            .Max();
        return occurredAt < last - ClockSkew.Allowed
            ? Refusal.Conflict(RefusalTexts.OccurredBeforeTheLastEvent(occurredAt, dossier.Part.Serial, last), RefusalCode.OutOfOrder)
            : null;
    }
}
