using System.Globalization;
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
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.GaugeStudies;

/// <summary>Gauge repeatability and reproducibility studies: designed, measured, and read.</summary>
public sealed class DesignGaugeStudy(WorkshopContext db, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/quality/gauge-studies", DesignGaugeStudy.ListAsync)
            .Is(Subjects.Studies, "listGaugeStudies", "Gauge repeatability and reproducibility studies.");
        api.MapGet("/quality/gauge-studies/{number}", DesignGaugeStudy.OneAsync)
            .Is(Subjects.Studies, "readGaugeStudy", "A study with its readings and its analysis of variance, or what is missing for one.");
        api.MapPost("/quality/gauge-studies", DesignGaugeStudy.DesignAsync)
            .For(Role.Quality)
            .Is(Subjects.Studies, "designGaugeStudy", "Design a study: what is measured, with what, on which pieces, by whom, how often.");
        api.MapPost("/quality/gauge-studies/{number}/readings", DesignGaugeStudy.TakeAsync)
            .For(Role.Builder, Role.Quality)
            .TakesOneOrMany<ReadingInput>()
            .Is(Subjects.Studies, "takeStudyReadings", "Enter one reading of a study, or a list; they never enter the record of a part.");
    }

    public sealed record Input(
        string Title,
        string Characteristic,
        string Unit,
        string InstrumentKind,
        IReadOnlyList<string> Parts,
        IReadOnlyList<string> People,
        int Repeats,
        decimal? Lower = null,
        decimal? Upper = null
    );

    public sealed record ReadingInput(
        string Part,
        string Person,
        int Trial,
        NumberText Value,
        string? Instrument = null,
        string? Reason = null
    );

    public static async Task<Table<Page<StudyRow>>> ListAsync(
        HttpContext http,
        PageRequest page,
        DesignGaugeStudy use,
        CancellationToken cancellation
    ) => Csv.Answer(page.Part<StudyRow>([.. (await use.FindAsync(null, cancellation)).Select(StudyRow.Of)], s => s.Number));

    public static async Task<Results<Ok<StudyAnswer>, Problem>> OneAsync(
        string number,
        DesignGaugeStudy use,
        CancellationToken cancellation
    ) =>
        await use.FindAsync(number, cancellation) is [var study]
            ? TypedResults.Ok(StudyAnswer.Of(study))
            : ProblemAnswers.From(Unknown(number));

    public static Task<Results<Recorded<StudyRow>, Problem>> DesignAsync(
        Input input,
        SignedIn signedIn,
        DesignGaugeStudy use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.DesignAsync(input, signedIn.Actor, cancellation));

    /// <summary>The body is one reading or a list of them; all or none are taken.</summary>
    public static Task<Results<Recorded<StudyRow>, Problem>> TakeAsync(
        string number,
        JsonElement body,
        SignedIn signedIn,
        DesignGaugeStudy use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.TakeAsync(number, OneOrMany.Read<ReadingInput>(body), signedIn.Actor, cancellation));

    /// <summary>The studies, the latest first; one by its number, or all.</summary>
    public async Task<IReadOnlyList<StudyView>> FindAsync(string? number, CancellationToken cancellation)
    {
        var code = number?.Trim().ToUpperInvariant();
        var studies = await db.Set<MeasurementStudy>()
            .AsNoTracking()
            .Where(s => code == null || s.Number == code)
            .OrderByDescending(s => s.Id)
            .ToListAsync(cancellation);
        var ids = studies.ConvertAll(s => s.Id);
        var readings = (
            await db.Set<MeasurementStudyReading>().AsNoTracking().Where(r => ids.Contains(r.StudyId)).ToListAsync(cancellation)
        ).ToLookup(r => r.StudyId);
        return [.. studies.Select(s => new StudyView(s, [.. readings[s.Id]]))];
    }

    public async Task<Answer<StudyRow>> DesignAsync(Input input, Actor actor, CancellationToken cancellation)
    {
        string[] people = [.. input.People.Select(p => p.Trim().ToUpperInvariant())];
        var known = await db.Set<Person>().Where(p => people.Contains(p.Badge)).Select(p => p.Badge).ToListAsync(cancellation);
        if (people.Except(known).FirstOrDefault() is { } stranger)
        {
            return Refusal.Invalid("people", QualitySentences.PeopleAreNamedByBadges(stranger));
        }

        // Two at once take the same number; the unique index lets one win, and the other is run again.
        var earlier = await db.Set<MeasurementStudy>().CountAsync(cancellation);
        var stamp = writes.Stamp(actor.PersonId);
        var decision = MeasureForStudy.Design(
            new(
                stamp.NewId(),
                string.Create(CultureInfo.InvariantCulture, $"GS-{earlier + 1:0000}"),
                input.Title.Trim(),
                input.Characteristic.Trim(),
                input.Unit.Trim(),
                input.InstrumentKind.Trim(),
                [.. input.Parts.Select(p => p.Trim())],
                people,
                input.Repeats,
                input.Lower,
                input.Upper,
                stamp.By,
                stamp.OccurredAt,
                stamp.RecordedAt
            )
        );
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        await writes.Book.AppendAsync(decision.Value!.Id, "design-gauge-study", decision.Facts, cancellation);
        return Answer.Created(StudyRow.Of(new(decision.Value, [])));
    }

    public async Task<Answer<StudyRow>> TakeAsync(
        string number,
        IReadOnlyList<ReadingInput> inputs,
        Actor actor,
        CancellationToken cancellation
    )
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
            return Unknown(number);
        }

        await writes.Book.LockAsync(id, cancellation);
        var view = (await FindAsync(code, cancellation))[0];
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

    private static Refusal Unknown(string number) => Refusal.NotFound(QualitySentences.ThereIsNoGaugeStudy(number));

    private async Task<(MeasurementStudyReading? Reading, Refusal? Refusal)> TakeOneAsync(
        StudyView view,
        ReadingInput input,
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
            : await db.Set<Instrument>().AsNoTracking().FirstOrDefaultAsync(i => i.Code == code, cancellation);
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
