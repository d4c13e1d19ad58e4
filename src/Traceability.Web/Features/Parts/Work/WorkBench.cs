using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>
/// What a command starts from: the part, found and locked, and what the request says besides: time, station, instruments.
/// </summary>
public sealed class WorkBench(
    WorkshopContext db,
    Writes writes,
    DossierReader dossiers,
    InstrumentQuery instruments,
    WorkshopCalendar calendar
)
{
    /// <summary>A part as it stands now, for answers.</summary>
    public PartAnswer AnswerOf(Dossier part) => PartAnswer.Of(part, new(writes.Now, calendar));

    /// <summary>
    /// Looks a part and the station at which something is to be recorded on it up in one go; says what is wrong with the station or a
    /// stated time.
    /// </summary>
    public async Task<(Guid? PartId, Refusal? Refusal)> FindAsync(
        string serialOrCarrier,
        DateTimeOffset? occurredAt,
        string station,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (Timing.Problem(occurredAt, writes.Now, actor) is { } problem)
        {
            return (null, problem);
        }

        var (partId, stands) = await dossiers.FindAsync(serialOrCarrier, station, cancellation);
        return (partId, StationProblem(station, stands));
    }

    /// <summary>Locks the part with that serial or in that carrier.</summary>
    public async Task<OpenPart?> OpenAsync(string serialOrCarrier, CancellationToken cancellation) =>
        await dossiers.FindAsync(serialOrCarrier, cancellation) is { } id ? await writes.Book.OpenAsync(id, cancellation) : null;

    /// <summary>Locks the part to which an attempt belongs.</summary>
    public async Task<OpenPart?> OpenByAttemptAsync(Guid attemptId, CancellationToken cancellation)
    {
        var partId = await db.Set<Attempt>().Where(a => a.Id == attemptId).Select(a => (Guid?)a.PartId).FirstOrDefaultAsync(cancellation);
        return partId is null ? null : await writes.Book.OpenAsync(partId.Value, cancellation);
    }

    /// <summary>What is wrong with a stated time or station, if anything.</summary>
    public async Task<Refusal?> ProblemAsync(DateTimeOffset? occurredAt, string? station, Actor actor, CancellationToken cancellation) =>
        Timing.Problem(occurredAt, writes.Now, actor)
        ?? (station is null ? null : StationProblem(station, (await dossiers.FindAsync("", station, cancellation)).Station));

    /// <summary>
    /// What is wrong with a stated time of something inside an attempt or load that began at a time: a machine may send later what it took
    /// then.
    /// </summary>
    public Refusal? ProblemInside(DateTimeOffset? occurredAt, DateTimeOffset began, Actor actor) =>
        actor.Is(Role.Instrument) ? Timing.ProblemInside(occurredAt, began, writes.Now) : Timing.Problem(occurredAt, writes.Now, actor);

    private static Refusal? StationProblem(string station, string? stands) =>
        stands switch
        {
            null => Refusal.Invalid("station", PartsSentences.ThereIsNoStation(station)),
            "" => null,
            var because => Refusal.Conflict(
                PartsSentences.StationIsRetired(station.Trim().ToUpperInvariant(), because),
                RefusalCode.Retired
            ),
        };

    /// <summary>The instruments with these codes.</summary>
    public async Task<(IReadOnlyList<InstrumentStanding> Found, Refusal? Refusal)> InstrumentsAsync(
        IReadOnlyCollection<string> codes,
        CancellationToken cancellation
    )
    {
        codes = [.. codes.Select(c => c.Trim().ToUpperInvariant()).Distinct()];
        var found = await instruments.FindAsync(codes, cancellation);
        var unknown = codes.Except(found.Select(i => i.Instrument.Code)).ToList();
        return (
            found,
            unknown.Count == 0 ? null : Refusal.Invalid("instruments", PartsSentences.ThereIsNoInstrument(string.Join(", ", unknown)))
        );
    }
}
