using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Instruments;

/// <summary>
/// Corrects a check that was entered wrong: the right one takes its place, at the same moment, and the wrong one stays to be seen with the
/// reason. What is in doubt follows.
/// </summary>
public sealed class CorrectCheck(InstrumentProof proof) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/instruments/{code}/checks/{id:guid}/corrections", HandleAsync)
            .For(Role.Quality, Role.Lead)
            .Is(Subjects.Instruments, "correctCheck", "Correct a check that was entered wrong; both stay to be seen.");

    /// <summary>What the check should have said.</summary>
    /// <param name="Reason" example="a digit slipped">Why the one of before was wrong, at most 400 characters.</param>
    /// <param name="Value" example="1000.2">What the instrument read at its reference, in its own unit.</param>
    /// <param name="Passed" example="true">The person's word; must agree with the reading where both are given.</param>
    /// <param name="Note" example="after moving the bench">Anything else.</param>
    public sealed record Input(string Reason, NumberText? Value = null, bool? Passed = null, string? Note = null);

    /// <param name="code" example="RB-1">The instrument's code.</param>
    /// <param name="id" example="019a1c52-7d1e-7b4e-9c41-2f5d3e8a6b10">The check that was entered wrong.</param>
    public static Task<Results<Changed<ProvenInstrument>, Problem>> HandleAsync(
        string code,
        Guid id,
        Input input,
        SignedIn signedIn,
        CorrectCheck use,
        Writes writes
    ) => writes.ChangeAsync(cancellation => use.RunAsync(code, id, input, signedIn.Actor, cancellation));

    public async Task<Answer<ProvenInstrument>> RunAsync(string code, Guid id, Input input, Actor actor, CancellationToken cancellation)
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

        if (InstrumentProof.ReasonProblem(input.Reason) is { } noReason)
        {
            return noReason;
        }

        var answer = await proof.RunAsync(
            code,
            "correct-check",
            null,
            actor,
            (i, s) =>
                new InstrumentCheck(
                    s.NewId(),
                    i.Instrument.Id,
                    i.Instrument.CheckNominal,
                    value?.Value,
                    RecordCheck.Passes(i.Instrument, value?.Value, input.Passed),
                    input.Note,
                    s.By,
                    i.Checks.First(c => c.Id == id).OccurredAt,
                    s.RecordedAt
                )
                {
                    Replaces = id,
                    ReplacesBecause = input.Reason.Trim(),
                },
            cancellation,
            i => i.Checks.Any(c => c.Id == id) ? null : Refusal.NotFound(SetupSentences.NoSuchCheckStands(code, id))
        );
        return answer.Value is { } proven ? Answer.Ok(proven) : answer;
    }
}
