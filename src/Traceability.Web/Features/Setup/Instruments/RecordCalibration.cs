using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Instruments;

/// <summary>Records a calibration of an instrument.</summary>
public sealed class RecordCalibration(Writes writes, InstrumentProof proof, WorkshopCalendar calendar) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/instruments/{code}/calibrations", HandleAsync)
            .For(Role.Lead, Role.Quality)
            .Is(Subjects.Instruments, "recordCalibration", "Record a calibration.");

    /// <summary>
    /// No instrument of such a workshop stays true for longer; a date beyond is a slip of the pen. Common practice, no source.
    /// </summary>
    public const int MostYears = 10;

    /// <summary>Beyond this a person is asked whether the date is meant. Common practice, no source.</summary>
    public const int UsualYears = 3;

    /// <summary>A calibration as its certificate says it.</summary>
    /// <param name="CalibratedOn" example="2026-01-31">The day of the calibration, not in the future.</param>
    /// <param name="DueOn" example="2027-01-31">The last day on which it counts, at most ten years later.</param>
    /// <param name="Reference" example="CAL-2026-118">The number of the calibration certificate.</param>
    /// <param name="Passed" example="true">False when the instrument was found out of tolerance.</param>
    /// <param name="Note" example="adjusted before">Anything else that the certificate says.</param>
    /// <param name="OccurredAt" example="2026-01-31T14:20:00Z">When it was done; now, when left out.</param>
    /// <param name="Constants">Constants of the instrument by name, in the unit that the name ends in.</param>
    public sealed record Input(
        DateOnly CalibratedOn,
        DateOnly DueOn,
        string Reference,
        bool Passed = true,
        string? Note = null,
        DateTimeOffset? OccurredAt = null,
        IReadOnlyDictionary<string, decimal>? Constants = null
    );

    /// <param name="code" example="RB-1">The instrument's code.</param>
    public static Task<Results<Recorded<ProvenInstrument>, Problem>> HandleAsync(
        string code,
        Input input,
        SignedIn signedIn,
        RecordCalibration use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(code, input, signedIn.Actor, cancellation));

    public async Task<Answer<ProvenInstrument>> RunAsync(string code, Input input, Actor actor, CancellationToken cancellation) =>
        ProblemOf(input) is { } problem
            ? problem
            : await proof.RunAsync(
                code,
                "calibrate",
                input.OccurredAt,
                actor,
                (i, s) => CalibrationOf(input, i.Instrument.Id, s, null),
                cancellation
            );

    /// <summary>The calibration that is said; with a correction in the place of another.</summary>
    public static Calibration CalibrationOf(Input input, Guid instrumentId, Stamp s, (Guid Id, string Because)? replaces) =>
        new(
            s.NewId(),
            instrumentId,
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
            Replaces = replaces?.Id,
            ReplacesBecause = replaces?.Because,
        };

    /// <summary>What is wrong with what is said of a calibration, if anything.</summary>
    public Refusal? ProblemOf(Input input)
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

        return null;
    }
}
