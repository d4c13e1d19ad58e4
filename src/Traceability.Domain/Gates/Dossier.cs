using Traceability.Domain.Records;
using Traceability.Domain.Routes;

namespace Traceability.Domain.Gates;

/// <summary>
/// Everything that a gate needs to know about one part: its own facts, the route it started under, and where it sits.
/// A value: adding facts gives a new dossier, so that what a command would lead to can be computed before anything is written.
/// </summary>
public sealed class Dossier(Part part, Route route, IReadOnlyList<Fact> facts, PartPlacement around)
{
    private IReadOnlyList<AttemptView>? attempts;

    /// <summary>The part.</summary>
    public Part Part => part;

    /// <summary>The route revision it keeps.</summary>
    public Route Route => route;

    /// <summary>Its own facts in the order of recording.</summary>
    public IReadOnlyList<Fact> Facts => facts;

    /// <summary>Its carrier, the part it is fitted in, and what is wrong inside it.</summary>
    public PartPlacement Around => around;

    /// <summary>Every attempt with what belongs to it, oldest first.</summary>
    public IReadOnlyList<AttemptView> Attempts => attempts ??= AttemptView.AllOf(facts);

    /// <summary>The attempt now open, if any.</summary>
    public AttemptView? OpenAttempt => Attempts.LastOrDefault(a => a.Ending is null);

    /// <summary>The dossier as it will be once these facts are written.</summary>
    public Dossier With(IEnumerable<Fact> added, PartPlacement? newPlacement = null) =>
        new(part, route, [.. facts, .. added], newPlacement ?? around);

    /// <summary>The dossier as it stood at a moment of recording.</summary>
    public Dossier AsOf(DateTimeOffset moment) => new(part, route, [.. facts.Where(f => f.RecordedAt <= moment)], around);

    /// <summary>
    /// The dossier as it stood at a moment of recording, but with every correction made since: what an attempt that ended then is judged
    /// anew on.
    /// </summary>
    public Dossier CorrectedAsOf(DateTimeOffset moment) =>
        new(part, route, [.. facts.Where(f => f.RecordedAt <= moment || f is Correction)], around);

    /// <summary>The facts of one kind, oldest first.</summary>
    public IEnumerable<T> Of<T>()
        where T : Fact => facts.OfType<T>();

    /// <summary>What is fitted in it now, by position.</summary>
    public IReadOnlyDictionary<string, Fitting> PresentFittings
    {
        get
        {
            var removed = Of<Removal>().Select(r => r.FittingId).ToHashSet();
            return Of<Fitting>().Where(f => !removed.Contains(f.Id)).GroupBy(f => f.Position).ToDictionary(g => g.Key, g => g.Last());
        }
    }

    /// <summary>Nonconformities without a decision, except those that a corrected reading has answered.</summary>
    public IEnumerable<Nonconformity> OpenNonconformities()
    {
        var decided = Of<Disposition>().Select(d => d.NonconformityId).ToHashSet();
        return Of<Nonconformity>().Where(n => !decided.Contains(n.Id) && !AnsweredByCorrection(n));
    }

    /// <summary>Holds on the part itself that were not lifted.</summary>
    public IEnumerable<Hold> OpenHolds()
    {
        var lifted = Of<HoldRelease>().Select(r => r.HoldId).ToHashSet();
        return Of<Hold>().Where(h => !lifted.Contains(h.Id));
    }

    /// <summary>True when it was decided to scrap it.</summary>
    public bool Scrapped => Of<Disposition>().Any(d => d.Kind == DispositionKind.Scrap);

    /// <summary>The shipment, unless the unit has come back since.</summary>
    public Shipment? Shipped => LastShipment is { } s && Returned is null ? s : null;

    /// <summary>The latest shipment, whether the unit has come back since or not.</summary>
    public Shipment? LastShipment => Of<Shipment>().LastOrDefault();

    /// <summary>How it came back after its latest shipment; null when it did not, or when it was never shipped.</summary>
    public UnitReturn? Returned => LastShipment is { } s ? Of<UnitReturn>().LastOrDefault(r => r.RecordedAt > s.RecordedAt) : null;

    /// <summary>How it left use or the house.</summary>
    public Exit Exit =>
        new(
            Of<Disposition>().LastOrDefault(d => d.Kind == DispositionKind.Scrap)?.Reason,
            LastShipment is { } s ? new(s.OccurredAt, s.CustomerReference, Returned?.OccurredAt, Returned?.Complaint) : null
        );

    private bool AnsweredByCorrection(Nonconformity n) =>
        NonconformityCodes.OfReadings.Contains(n.Code) && n.AttemptId is { } id && Attempts.Any(a => a.Id == id && a.Passed);
}
