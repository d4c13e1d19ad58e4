using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Instruments;

/// <summary>
/// Corrects a calibration that was entered wrong: the right one takes its place, and the wrong one stays to be seen with the reason. What
/// hangs on it (when the instrument is due, what is in doubt) follows; what was computed with its constants stays as it was computed.
/// </summary>
public sealed class CorrectCalibration(RecordCalibration calibrations, InstrumentProof proof) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/instruments/{code}/calibrations/{id:guid}/corrections", HandleAsync)
            .For(Role.Lead, Role.Quality)
            .Is(Subjects.Instruments, "correctCalibration", "Correct a calibration that was entered wrong; both stay to be seen.");

    /// <summary>What the calibration should have said.</summary>
    /// <param name="CalibratedOn" example="2026-01-31">The day of the calibration, not in the future.</param>
    /// <param name="DueOn" example="2027-01-31">The last day on which it counts, at most ten years later.</param>
    /// <param name="Reference" example="CAL-2026-118">The number of the calibration certificate.</param>
    /// <param name="Reason" example="wrong year typed">Why the one of before was wrong, at most 400 characters.</param>
    /// <param name="Passed" example="true">False when the instrument was found out of tolerance.</param>
    /// <param name="Note" example="adjusted before">Anything else that the certificate says.</param>
    /// <param name="Constants">Constants of the instrument by name, in the unit that the name ends in.</param>
    public sealed record Input(
        DateOnly CalibratedOn,
        DateOnly DueOn,
        string Reference,
        string Reason,
        bool Passed = true,
        string? Note = null,
        IReadOnlyDictionary<string, decimal>? Constants = null
    );

    /// <param name="code" example="RB-1">The instrument's code.</param>
    /// <param name="id" example="019a1c52-7d1e-7b4e-9c41-2f5d3e8a6b10">The calibration that was entered wrong.</param>
    public static Task<Results<Changed<ProvenInstrument>, Problem>> HandleAsync(
        string code,
        Guid id,
        Input input,
        SignedIn signedIn,
        CorrectCalibration use,
        Writes writes
    ) => writes.ChangeAsync(cancellation => use.RunAsync(code, id, input, signedIn.Actor, cancellation));

    public async Task<Answer<ProvenInstrument>> RunAsync(string code, Guid id, Input input, Actor actor, CancellationToken cancellation)
    {
        var right = new RecordCalibration.Input(
            input.CalibratedOn,
            input.DueOn,
            input.Reference,
            input.Passed,
            input.Note,
            null,
            input.Constants
        );
        if ((InstrumentProof.ReasonProblem(input.Reason) ?? calibrations.ProblemOf(right)) is { } problem)
        {
            return problem;
        }

        var answer = await proof.RunAsync(
            code,
            "correct-calibration",
            null,
            actor,
            (i, s) =>
                RecordCalibration.CalibrationOf(right, i.Instrument.Id, s, (id, input.Reason.Trim())) with
                {
                    OccurredAt = i.Calibrations.First(c => c.Id == id).OccurredAt,
                },
            cancellation,
            i => i.Calibrations.Any(c => c.Id == id) ? null : Refusal.NotFound(SetupSentences.NoSuchCalibrationStands(code, id))
        );
        return answer.Value is { } proven ? Answer.Ok(proven) : answer;
    }
}
