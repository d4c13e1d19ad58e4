using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Tests.Gates.Vocabulary;

/// <summary>The clock on the wall and the ids, both in the test's hands. It stands still until the test moves it.</summary>
internal sealed class Bench
{
    private int ids;
    private int writes;

    public DateTimeOffset Now { get; set; } = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);

    public WorkshopCalendar Calendar { get; init; } = WorkshopCalendar.Utc;

    public DateOnly Today => Calendar.DayOf(Now);

    /// <summary>Every write is recorded a microsecond after the one before, as a locked part's writes are.</summary>
    public Stamp Stamp(Actor actor, DateTimeOffset? occurredAt = null) =>
        new(actor.PersonId, occurredAt ?? Now, Now.AddTicks(10 * ++writes), NewId);

    public Guid NewId() => new(++ids, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0);

    public void Later(double minutes) => Now = Now.AddMinutes(minutes);
}
