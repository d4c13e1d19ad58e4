using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Stages;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Station;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>
/// What a use case at the bench lays out before it decides: the locked part, the instruments, what is to be fitted, the clock.
/// </summary>
public sealed class WorkBench(
    WorkshopContext db,
    Writes writes,
    DossierReader dossiers,
    InstrumentQuery instruments,
    LotQuery lots,
    WorkshopCalendar calendar
)
{
    /// <summary>The context of a moment, for one person.</summary>
    public GateContext ContextAt(DateTimeOffset at, Actor? actor) => new(at, calendar) { Actor = actor };

    /// <summary>A part as it stands now, for answers.</summary>
    public PartAnswer AnswerOf(Dossier part) => PartAnswer.Of(part, ContextAt(writes.Now, null));

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

        var (partId, stationKnown) = await dossiers.FindAsync(serialOrCarrier, station, cancellation);
        return (partId, stationKnown ? null : NoStation(station));
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
        ?? (station is not null && !await StationExistsAsync(station.Trim().ToUpperInvariant(), cancellation) ? NoStation(station) : null);

    /// <summary>
    /// What is wrong with a stated time of something inside an attempt or load that began at a time: a machine may send later what it took
    /// then.
    /// </summary>
    public Refusal? ProblemInside(DateTimeOffset? occurredAt, DateTimeOffset began, Actor actor) =>
        actor.Is(Role.Instrument) ? Timing.ProblemInside(occurredAt, began, writes.Now) : Timing.Problem(occurredAt, writes.Now, actor);

    private static Refusal NoStation(string station) => Refusal.Invalid("station", StationSentences.ThereIsNoStation(station));

    private Task<bool> StationExistsAsync(string code, CancellationToken cancellation) =>
        db.Set<Domain.Records.Station>().AnyAsync(s => s.Code == code, cancellation);

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
            unknown.Count == 0 ? null : Refusal.Invalid("instruments", StationSentences.ThereIsNoInstrument(string.Join(", ", unknown)))
        );
    }

    /// <summary>
    /// The context in which an attempt ends: what is in its slots, and what its method looks at besides; nothing is read that nobody asks
    /// for.
    /// </summary>
    public async Task<GateContext> EndingAsync(
        Dossier dossier,
        AttemptView attempt,
        DateTimeOffset at,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var stage = dossier.Route.Find(attempt.Stage)!;
        var method = StageMethods.Get(stage.Method);
        var inside =
            stage.Slots.Count > 0 || method.ReadsInside
                ? (await InputsAsync(dossier, [], cancellation)).ByPosition
                : new Dictionary<string, Input>();
        return ContextAt(at, actor) with
        {
            Inputs = inside.Where(i => stage.Slot(i.Key) is not null).ToDictionary(),
            Inside = inside,
            CalibrationConstants = method.ReadsCalibrations
                ? await ConstantsAsync(attempt, cancellation)
                : new Dictionary<Guid, IReadOnlyDictionary<string, decimal>>(),
        };
    }

    private async Task<IReadOnlyDictionary<Guid, IReadOnlyDictionary<string, decimal>>> ConstantsAsync(
        AttemptView attempt,
        CancellationToken cancellation
    )
    {
        var ids = attempt.Instruments.Select(i => i.CalibrationId).OfType<Guid>().ToList();
        return ConstantsOf(await db.Set<Calibration>().AsNoTracking().Where(c => ids.Contains(c.Id)).ToListAsync(cancellation));
    }

    /// <summary>The constants of calibrations, by calibration.</summary>
    public static IReadOnlyDictionary<Guid, IReadOnlyDictionary<string, decimal>> ConstantsOf(IEnumerable<Calibration> calibrations) =>
        calibrations.Where(c => c.Constants is not null).ToDictionary(c => c.Id, c => (IReadOnlyDictionary<string, decimal>)c.Constants!);

    /// <summary>What is about to be fitted, by position, with the children locked; and what is in the stage's slots already.</summary>
    public async Task<Inputs> InputsAsync(Dossier parent, IReadOnlyList<FitRequest> requests, CancellationToken cancellation)
    {
        var inputs = new Dictionary<string, Input>();
        var children = new List<OpenPart>();
        var named = await NamedAsync(requests, cancellation);
        foreach (var request in requests)
        {
            if (inputs.ContainsKey(request.Position))
            {
                return new(inputs, children, Refusal.Invalid("position", StationSentences.PositionIsNamedTwice(request.Position)));
            }

            var (input, child, refusal) = await InputAsync(request, named, cancellation);
            if (input is null)
            {
                return new(inputs, children, refusal);
            }

            inputs[request.Position] = input;
            if (child is not null)
            {
                children.Add(child);
            }
        }

        foreach (var fitting in parent.PresentFittings.Values.Where(f => !inputs.ContainsKey(f.Position)))
        {
            if (await PresentAsync(fitting, cancellation) is { } present)
            {
                inputs[fitting.Position] = present;
            }
        }

        return new(inputs, children, null);
    }

    /// <summary>
    /// The children that are named, locked together and in order: two commands that want the same ones crosswise do not wait for each
    /// other.
    /// </summary>
    private async Task<IReadOnlyDictionary<string, NamedChild>> NamedAsync(
        IReadOnlyList<FitRequest> requests,
        CancellationToken cancellation
    )
    {
        var ids = new Dictionary<string, Guid>();
        foreach (var name in requests.Select(r => r.Child).OfType<string>().Distinct())
        {
            if (await dossiers.FindAsync(name, cancellation) is { } id)
            {
                ids[name] = id;
            }
        }

        if (ids.Count == 0)
        {
            return new Dictionary<string, NamedChild>();
        }

        var open = await writes.Book.OpenAsync(ids.Values, cancellation);
        var takenOut = await db.Set<Containment>()
            .Where(c => ids.Values.Contains(c.ItemId) && !c.ItemIsLot && c.Depth == 1)
            .GroupBy(c => c.ItemId)
            .Select(g => new { Id = g.Key, At = g.Max(c => c.PresentUntil) })
            .ToDictionaryAsync(x => x.Id, x => x.At, cancellation);
        return ids.ToDictionary(i => i.Key, i => new NamedChild(open[i.Value], takenOut.GetValueOrDefault(i.Value)));
    }

    private async Task<(Input? Input, OpenPart? Child, Refusal? Refusal)> InputAsync(
        FitRequest request,
        IReadOnlyDictionary<string, NamedChild> named,
        CancellationToken cancellation
    )
    {
        if (request.Child is null == request.Lot is null)
        {
            return (null, null, Refusal.Invalid("fittings", StationSentences.PositionTakesEitherChildOrLot(request.Position)));
        }

        if (request.Child is { } serial)
        {
            return named.TryGetValue(serial, out var child)
                ? (PartInput.Of(request.Position, child.Part.Dossier, false) with { FreeSince = child.FreeSince }, child.Part, null)
                : (null, null, Refusal.Invalid("child", StationSentences.NoPartToFit(serial)));
        }

        if (request.Quantity <= 0)
        {
            return (null, null, Refusal.Invalid("quantity", StationSentences.QuantityIsAboveZero));
        }

        return await lots.FindAsync([request.Lot!.Trim().ToUpperInvariant()], cancellation) is [var lot]
            ? (new LotInput(request.Position, lot.Lot, lot.State, lot.Holds, request.Quantity), null, null)
            : (null, null, Refusal.Invalid("lot", StationSentences.NoLotToFit(request.Lot)));
    }

    private async Task<Input?> PresentAsync(Fitting fitting, CancellationToken cancellation)
    {
        if (fitting.ChildId is { } child)
        {
            return await dossiers.LoadAsync(child, cancellation) is { } dossier ? PartInput.Of(fitting.Position, dossier, true) : null;
        }

        var lot = (await lots.StandingOfAsync(db.Set<Lot>().Where(l => l.Id == fitting.LotId), cancellation)).Single();
        return new LotInput(fitting.Position, lot.Lot, lot.State, lot.Holds, fitting.Quantity, true);
    }
}

/// <summary>A child that is to be fitted, locked, and when it was last taken out of something.</summary>
internal sealed record NamedChild(OpenPart Part, DateTimeOffset? TakenOutAt)
{
    /// <summary>The last thing that happened to it: it cannot have been fitted elsewhere before.</summary>
    public DateTimeOffset FreeSince =>
        Part
            .Dossier.Facts.Where(f => f is Attempt or AttemptEnding or Removal or Disposition)
            .Select(f => f.OccurredAt)
            .Append(TakenOutAt ?? Part.Dossier.Part.OccurredAt)
            .Max();
}

/// <summary>A wish to fit something at a position.</summary>
public sealed record FitRequest(string Position, string? Child = null, string? Lot = null, decimal? Quantity = null);

/// <summary>What is, or is about to be, in the slots; the children among it, locked.</summary>
public sealed record Inputs(IReadOnlyDictionary<string, Input> ByPosition, IReadOnlyList<OpenPart> Children, Refusal? Refusal);
