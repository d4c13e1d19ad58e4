using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Quality.Tracing;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.QualityDecisions;
using Traceability.Persistence.Book;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Instruments;

/// <summary>Records a calibration, or the check of an instrument against its reference.</summary>
public sealed class ProveInstrument(Writes writes, InstrumentQuery instruments, WorkshopCalendar calendar) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapPost("/instruments/{code}/calibrations", ProveInstrument.CalibrateAsync)
            .For(Role.Lead, Role.Quality)
            .Is(Subjects.Instruments, "recordCalibration", "Record a calibration.");
        api.MapPost("/instruments/{code}/checks", ProveInstrument.CheckAsync)
            .For(Role.Builder, Role.Quality, Role.Lead)
            .Is(Subjects.Instruments, "recordCheck", "Record a check against the reference.");
    }

    /// <summary>
    /// No instrument of such a workshop stays true for longer; a date beyond is a slip of the pen. Common practice, no source.
    /// </summary>
    public const int MostYears = 10;

    /// <summary>Beyond this a person is asked whether the date is meant. Common practice, no source.</summary>
    public const int UsualYears = 3;

    public sealed record CalibrationInput(
        DateOnly CalibratedOn,
        DateOnly DueOn,
        string Reference,
        bool Passed = true,
        string? Note = null,
        DateTimeOffset? OccurredAt = null,
        IReadOnlyDictionary<string, decimal>? Constants = null
    );

    public sealed record CheckInput(NumberText? Value = null, bool? Passed = null, string? Note = null, DateTimeOffset? OccurredAt = null);

    public sealed record Output(string Code, string Kind, string State, bool Passed, string? Because);

    public static Task<Results<Recorded<Output>, Problem>> CalibrateAsync(
        string code,
        CalibrationInput input,
        SignedIn signedIn,
        ProveInstrument use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.CalibrateAsync(code, input, signedIn.Actor, cancellation));

    public static Task<Results<Recorded<Output>, Problem>> CheckAsync(
        string code,
        CheckInput input,
        SignedIn signedIn,
        ProveInstrument use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.CheckAsync(code, input, signedIn.Actor, cancellation));

    public async Task<Answer<Output>> CalibrateAsync(string code, CalibrationInput input, Actor actor, CancellationToken cancellation)
    {
        if (input.DueOn < input.CalibratedOn || input.CalibratedOn > calendar.DayOf(writes.Now))
        {
            return Refusal.Invalid("dueOn", SetupSentences.CalibrationLiesInThePast);
        }

        if (input.DueOn > input.CalibratedOn.AddYears(MostYears))
        {
            return Refusal.Invalid(
                "dueOn",
                SetupSentences.CalibrationIsDueTooFarAhead(MostYears, WorkshopCalendar.Say(input.CalibratedOn.AddYears(MostYears)))
            );
        }

        if (string.IsNullOrWhiteSpace(input.Reference))
        {
            return Refusal.Invalid("reference", SetupSentences.NameTheCalibrationCertificate);
        }

        if (
            input.Constants?.FirstOrDefault(c =>
                !CalibrationConstants.All.ContainsKey(c.Key) || (c.Value < 0 && !CalibrationConstants.OfEitherSign.Contains(c.Key))
            ) is
            { Key: { } wrong }
        )
        {
            return Refusal.Invalid(
                "constants",
                CalibrationConstants.All.ContainsKey(wrong)
                    ? SetupSentences.IsBelowZero(wrong)
                    : SetupSentences.IsNoConstantOfACalibration(wrong, string.Join(", ", CalibrationConstants.All.Keys))
            );
        }

        return await ProveAsync(
            code,
            "calibrate",
            input.OccurredAt,
            actor,
            (i, s) =>
                new Calibration(
                    s.NewId(),
                    i.Instrument.Id,
                    input.CalibratedOn,
                    input.DueOn,
                    input.Reference,
                    input.Passed,
                    input.Note,
                    s.By,
                    s.OccurredAt,
                    s.RecordedAt
                )
                {
                    Constants = input.Constants is { Count: > 0 } constants ? new(constants) : null,
                },
            cancellation
        );
    }

    public async Task<Answer<Output>> CheckAsync(string code, CheckInput input, Actor actor, CancellationToken cancellation)
    {
        EnteredDecimal? value = null;
        if (input.Value is { } text && !EnteredDecimal.TryParse(text.Text, out value, out var problem))
        {
            return Refusal.Invalid("value", problem);
        }

        if (value is null && input.Passed is null)
        {
            return Refusal.Invalid("value", SetupSentences.GiveTheReadingOfTheReference);
        }

        return await ProveAsync(
            code,
            "check",
            input.OccurredAt,
            actor,
            (i, s) =>
                new InstrumentCheck(
                    s.NewId(),
                    i.Instrument.Id,
                    i.Instrument.CheckNominal,
                    value?.Value,
                    Passes(i.Instrument, value?.Value, input.Passed),
                    input.Note,
                    s.By,
                    s.OccurredAt,
                    s.RecordedAt
                ),
            cancellation
        );
    }

    /// <summary>
    /// A reading passes within the instrument's tolerance, the edge included; without a reference value the person's word counts. Both must
    /// agree.
    /// </summary>
    private static bool Passes(Instrument instrument, decimal? value, bool? word) =>
        word != false
        && (
            value is null
            || instrument.CheckNominal is null
            || Math.Abs(value.Value - instrument.CheckNominal.Value) <= instrument.CheckTolerance
        );

    private async Task<Answer<Output>> ProveAsync(
        string code,
        string command,
        DateTimeOffset? occurredAt,
        Actor actor,
        Func<InstrumentStanding, Stamp, Fact> fact,
        CancellationToken cancellation
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

        var added = fact(found, writes.Stamp(actor.PersonId, occurredAt));
        await writes.Book.AppendAsync(found.Instrument.Id, command, [added], cancellation);
        var after = added switch
        {
            Calibration c => found with { Calibrations = [.. found.Calibrations, c] },
            InstrumentCheck c => found with { Checks = [.. found.Checks, c] },
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
            new Output(
                found.Instrument.Code,
                found.Instrument.Kind,
                Words.Of(after.StateOn(calendar.DayOf(writes.Now), calendar)),
                passed,
                because
            )
        );
    }

    /// <summary>The check after a series counts as much as the one before it: what was measured in between is named.</summary>
    private string InDoubt(InstrumentStanding instrument) =>
        InstrumentDoubt.Of(instrument, calendar).Since is { } good
            ? SetupSentences.EverythingSinceIsInDoubt(calendar.Say(good))
            : SetupSentences.EverythingIsInDoubt;
}
