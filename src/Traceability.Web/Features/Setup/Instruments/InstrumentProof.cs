using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Tracing;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Instruments;

/// <summary>An instrument after a calibration or a check.</summary>
/// <param name="Code" example="RB-1">The instrument's code.</param>
/// <param name="Kind" example="resonance-bench">Its kind.</param>
/// <param name="State" example="usable">Where it stands today.</param>
/// <param name="Passed" example="true">False when it was found out of tolerance.</param>
/// <param name="Because" example="found out of tolerance">Why not; null when it passed.</param>
/// <param name="Id" example="019a1c52-7d1e-7b4e-9c41-2f5d3e8a6b10">The calibration or check, by which it is corrected.</param>
public sealed record ProvenInstrument(
    string Code,
    string Kind,
    [property: OneOf(typeof(InstrumentState))] string State,
    bool Passed,
    string? Because,
    Guid Id
);

/// <summary>Records what shows that an instrument is right, or that it is not.</summary>
public sealed class InstrumentProof(Writes writes, InstrumentQuery instruments, WorkshopCalendar calendar)
{
    private const int LongestReason = 400;

    /// <summary>What is wrong with the reason of a correction, if anything.</summary>
    public static Refusal? ReasonProblem(string reason) =>
        string.IsNullOrWhiteSpace(reason) || reason.Length > LongestReason
            ? Refusal.Invalid("reason", SetupSentences.SayWhyTheProofWasWrong)
            : null;

    /// <summary>Appends a calibration or a check, and says where the instrument stands after it.</summary>
    public async Task<Answer<ProvenInstrument>> RunAsync(
        string code,
        string command,
        DateTimeOffset? occurredAt,
        Actor actor,
        Func<InstrumentStanding, Stamp, Fact> fact,
        CancellationToken cancellation,
        Func<InstrumentStanding, Refusal?>? problemWith = null
    )
    {
        if (Timing.Problem(occurredAt, writes.Now, actor) is { } wrongTime)
        {
            return wrongTime;
        }

        if (await instruments.FindAsync([code.Trim().ToUpperInvariant()], cancellation) is not [var found])
        {
            return Refusal.NotFound(SetupSentences.ThereIsNoInstrument(code));
        }

        if (problemWith?.Invoke(found) is { } wrong)
        {
            return wrong;
        }

        var added = fact(found, writes.Stamp(actor.PersonId, occurredAt));
        await writes.Book.AppendAsync(found.Instrument.Id, command, [added], cancellation);
        var after = added switch
        {
            Calibration c => found with { Calibrations = [.. found.Calibrations.Where(b => b.Id != c.Replaces), c] },
            InstrumentCheck c => found with { Checks = [.. found.Checks.Where(b => b.Id != c.Replaces), c] },
            _ => found,
        };
        var (passed, because) = added switch
        {
            Calibration { Passed: false } => (false, SetupSentences.FoundOutOfTolerance),
            InstrumentCheck { Passed: false } c => (
                false,
                SetupSentences.ReadWhereAllowed(
                    c.Value,
                    c.Nominal,
                    found.Instrument.CheckTolerance,
                    found.Instrument.CheckUnit,
                    InDoubt(after)
                )
            ),
            _ => (true, (string?)null),
        };
        return Answer.Created(
            new ProvenInstrument(
                found.Instrument.Code,
                found.Instrument.Kind,
                Words.Of(after.StateOn(calendar.DayOf(writes.Now), calendar)),
                passed,
                because,
                added.Id
            )
        );
    }

    /// <summary>The check after a series counts as much as the one before it: what was measured in between is named.</summary>
    private string InDoubt(InstrumentStanding instrument) =>
        InstrumentDoubt.Of(instrument, calendar).Since is { } good
            ? SetupSentences.EverythingSinceIsInDoubt(calendar.Say(good))
            : SetupSentences.EverythingIsInDoubt;
}
