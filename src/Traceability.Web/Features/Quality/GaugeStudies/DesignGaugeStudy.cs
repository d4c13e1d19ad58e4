using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.Studies;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.GaugeStudies;

/// <summary>Designs a gauge study: what is measured, with what, on which pieces, by whom, how often.</summary>
public sealed class DesignGaugeStudy(WorkshopContext db, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/quality/gauge-studies", HandleAsync)
            .For(Role.Quality)
            .Is(Subjects.Studies, "designGaugeStudy", "Design a study: what is measured, with what, on which pieces, by whom, how often.");

    /// <summary>A study to be made: every person measures every piece so many times.</summary>
    /// <param name="Title" example="Capacitance of capsules">What it is called.</param>
    /// <param name="Characteristic" example="capacitancePf">What is measured.</param>
    /// <param name="Unit" example="pF">In which unit.</param>
    /// <param name="InstrumentKind" example="capacitance-meter">With what kind of instrument.</param>
    /// <param name="Parts">Names of the pieces, two or more.</param>
    /// <param name="People">Badges of the people, two or more.</param>
    /// <param name="Repeats" example="2">How often each person measures each piece, 2 to 10.</param>
    /// <param name="Lower" example="68">Lower limit, when there is one.</param>
    /// <param name="Upper" example="73">Upper limit, when there is one.</param>
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

    public static Task<Results<Recorded<StudyRow>, Problem>> HandleAsync(
        Input input,
        SignedIn signedIn,
        DesignGaugeStudy use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(input, signedIn.Actor, cancellation));

    public async Task<Answer<StudyRow>> RunAsync(Input input, Actor actor, CancellationToken cancellation)
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
}
