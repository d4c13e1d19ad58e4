using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.Studies;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.GaugeStudies;

/// <summary>Readings of a gauge study; they never enter the record of a part.</summary>
public sealed class TakeStudyReadings(WorkshopContext db, GaugeStudyReader studies, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/quality/gauge-studies/{number}/readings", HandleAsync)
            .For(Role.Builder, Role.Quality)
            .TakesOneOrMany<Input>()
            .Is(Subjects.Studies, "takeStudyReadings", "Enter one reading of a study, or a list; they never enter the record of a part.");

    /// <summary>One reading of a study.</summary>
    /// <param name="Part" example="P4">The piece measured.</param>
    /// <param name="Person" example="B2">Badge of who measured.</param>
    /// <param name="Trial" example="1">Which of the repeats, from 1.</param>
    /// <param name="Value" example="70.52">The value in the study's unit; its digits are kept.</param>
    /// <param name="Instrument" example="CAP-02">The code of the instrument used.</param>
    /// <param name="Reason" example="read the wrong scale">Why it replaces the reading that is there already.</param>
    public sealed record Input(string Part, string Person, int Trial, NumberText Value, string? Instrument = null, string? Reason = null);

    /// <summary>The body is one reading or a list of them; all or none are taken.</summary>
    /// <param name="number" example="GS-0002">The study's number.</param>
    public static Task<Results<Recorded<StudyRow>, Problem>> HandleAsync(
        string number,
        JsonElement body,
        SignedIn signedIn,
        TakeStudyReadings use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(number, OneOrMany.Read<Input>(body), signedIn.Actor, cancellation));

    public async Task<Answer<StudyRow>> RunAsync(string number, IReadOnlyList<Input> inputs, Actor actor, CancellationToken cancellation)
    {
        var code = number.Trim().ToUpperInvariant();
        if (inputs.Count == 0)
        {
            return Refusal.Invalid("readings", QualitySentences.NoReadingWasSent);
        }

        if (
            await db.Set<MeasurementStudy>().Where(s => s.Number == code).Select(s => (Guid?)s.Id).FirstOrDefaultAsync(cancellation)
            is not { } id
        )
        {
            return GaugeStudyReader.Unknown(number);
        }

        await writes.Book.LockAsync(id, cancellation);
        var view = (await studies.FindAsync(code, cancellation))[0];
        var facts = new List<Fact>();
        foreach (var input in inputs)
        {
            var (reading, refusal) = await TakeOneAsync(view, input, actor, cancellation);
            if (reading is null)
            {
                return refusal!;
            }

            facts.Add(reading);
            view = view with { Readings = [.. view.Readings, reading] };
        }

        await writes.Book.AppendAsync(id, "take-gauge-readings", facts, cancellation);
        return Answer.Created(StudyRow.Of(view));
    }

    private async Task<(MeasurementStudyReading? Reading, Refusal? Refusal)> TakeOneAsync(
        StudyView view,
        Input input,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (!EnteredDecimal.TryParse(input.Value.Text, out var value, out var problem))
        {
            return (null, Refusal.Invalid("value", problem));
        }

        var code = string.IsNullOrWhiteSpace(input.Instrument) ? null : input.Instrument.Trim().ToUpperInvariant();
        var instrument = code is null
            ? null
            : await db.Offered<Instrument>().AsNoTracking().FirstOrDefaultAsync(i => i.Code == code, cancellation);
        if (code is not null && instrument is null)
        {
            return (null, Refusal.Invalid("instrument", QualitySentences.ThereIsNoInstrument(input.Instrument)));
        }

        var decision = MeasureForStudy.Take(
            view,
            new(input.Part.Trim(), input.Person.Trim().ToUpperInvariant(), input.Trial),
            value,
            instrument,
            input.Reason,
            writes.Stamp(actor.PersonId)
        );
        return (decision.Value, decision.Refusal);
    }
}
