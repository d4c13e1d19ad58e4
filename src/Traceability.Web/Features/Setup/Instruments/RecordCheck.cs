using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Instruments;

/// <summary>Records the check of an instrument against its reference.</summary>
public sealed class RecordCheck(InstrumentProof proof) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/instruments/{code}/checks", HandleAsync)
            .For(Role.Builder, Role.Quality, Role.Lead)
            .Is(Subjects.Instruments, "recordCheck", "Record a check against the reference.");

    /// <summary>A check: the reading of the reference, or the word that it passed.</summary>
    /// <param name="Value" example="1000.2">What the instrument read at its reference, in its own unit.</param>
    /// <param name="Passed" example="true">The person's word; must agree with the reading where both are given.</param>
    /// <param name="Note" example="after moving the bench">Anything else.</param>
    /// <param name="OccurredAt" example="2026-01-31T14:20:00Z">When it was checked; now, when left out.</param>
    public sealed record Input(NumberText? Value = null, bool? Passed = null, string? Note = null, DateTimeOffset? OccurredAt = null);

    /// <param name="code" example="RB-1">The instrument's code.</param>
    public static Task<Results<Recorded<ProvenInstrument>, Problem>> HandleAsync(
        string code,
        Input input,
        SignedIn signedIn,
        RecordCheck use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(code, input, signedIn.Actor, cancellation));

    public async Task<Answer<ProvenInstrument>> RunAsync(string code, Input input, Actor actor, CancellationToken cancellation)
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

        return await proof.RunAsync(
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
    internal static bool Passes(Instrument instrument, decimal? value, bool? word) =>
        word != false
        && (
            value is null
            || instrument.CheckNominal is null
            || Math.Abs(value.Value - instrument.CheckNominal.Value) <= instrument.CheckTolerance
        );
}
