using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;

namespace Traceability.Domain.Gates.Standings;

/// <summary>
/// Everything that decides what a part is now. One part brings it in its dossier; a list of hundreds reads only this (see
/// <c>StandingQuery</c>).
/// </summary>
public sealed record StandingGrounds
{
    /// <summary>True for a finished unit's kind: it is not fitted in anything, it goes out.</summary>
    public bool IsUnit { get; init; }

    /// <summary>How it left use or the house: by itself, or else inside the outermost thing around it.</summary>
    public Exit Exit { get; init; } = Exit.None;

    /// <summary>The part that it is fitted in.</summary>
    public string? FittedIn { get; init; }

    /// <summary>The outermost part around it, when it is with that that it left use or the house.</summary>
    public string? Outermost { get; init; }

    /// <summary>Why it, or something inside it, is on hold.</summary>
    public IReadOnlyList<string> Holds { get; init; } = [];

    /// <summary>Which lots inside it are in quarantine, and why.</summary>
    public IReadOnlyList<string> Quarantines { get; init; } = [];

    /// <summary>What was found on it, or on something inside it, and is not decided on.</summary>
    public IReadOnlyList<string> Nonconformities { get; init; } = [];

    /// <summary>The stage that is open on it, else its next; null when it passed all.</summary>
    public StageGrounds? Stage { get; init; }

    /// <summary>What was decided against it: holds, then quarantines.</summary>
    public IEnumerable<string> Stops => [.. Holds, .. Quarantines];

    /// <summary>What the part's dossier says at the moment of the context.</summary>
    public static StandingGrounds Of(Dossier dossier, GateContext context)
    {
        var around = dossier.Around;
        return new StandingGrounds
        {
            IsUnit = dossier.Part.Kind == PartKinds.Unit,
            FittedIn = around.FittedInSerial,
            Holds = [.. dossier.OpenHolds().Select(h => h.Reason), .. Said(around, InsideProblemKind.Hold)],
            Quarantines = [.. Said(around, InsideProblemKind.Quarantine)],
            Nonconformities =
            [
                .. dossier.OpenNonconformities().Select(NoOpenNonconformity.InShort),
                .. Said(around, InsideProblemKind.Nonconformity),
                .. InDoubt(dossier),
            ],
            Stage = around.FittedInSerial is null ? StageGrounds.Of(dossier, context) : null,
        }.Leaving(dossier.Exit, around.Outermost);
    }

    /// <summary>
    /// The same with the way in which it left use or the house: what was scrapped by itself was so whatever is around it.
    /// </summary>
    public StandingGrounds Leaving(Exit own, Container? outermost) =>
        own.Scrapped is not null || outermost is null || outermost.Exit == Exit.None
            ? this with
            {
                Exit = own,
            }
            : this with
            {
                Exit = outermost.Exit,
                Outermost = outermost.Serial,
            };

    /// <summary>
    /// What was measured in doubt stops what has passed all its stages: it is neither fitted, certified nor shipped. Work on a part goes
    /// on.
    /// </summary>
    private static IEnumerable<string> InDoubt(Dossier dossier) =>
        dossier.IsFinished() ? dossier.Around.InDoubt.Select(d => d.Because) : [];

    /// <summary>What is wrong with things inside, in words; what concerns the part itself, as a film lot, needs no name.</summary>
    public static IEnumerable<string> Said(PartPlacement around, InsideProblemKind kind) =>
        [
            .. around.OnItself.Where(p => p.Kind == kind).Select(p => p.Reason),
            .. around.Inside.Where(p => p.Kind == kind).Select(p => $"{p.Subject}: {p.Reason}"),
        ];
}

/// <summary>Where a part is on its route, and whether it may go on there.</summary>
/// <param name="Title">The stage that is open on it, else its next.</param>
/// <param name="State">Open: under way, or may be started. Waiting: time must pass, also before it may be closed.</param>
/// <param name="OpensAt">From when it may start, or be closed.</param>
/// <param name="Because">What keeps it shut.</param>
public sealed record StageGrounds(string Title, StageState State, DateTimeOffset? OpensAt = null, string? Because = null)
{
    /// <summary>What the gates say; null when the part passed its last stage.</summary>
    public static StageGrounds? Of(Dossier dossier, GateContext context)
    {
        var nobody = context with { Actor = null, Instruments = null, Inputs = null };
        if (dossier.OpenAttempt is { } open && dossier.Route.Find(open.Stage) is { } under)
        {
            return MinimumTimeOpen.Check(new(dossier, under, nobody)) is { Met: false } time
                ? new(under.Title, StageState.Waiting, time.OpensAt, time.Because)
                : new(under.Title, StageState.Open);
        }

        if (dossier.NextStage() is not { } next)
        {
            return null;
        }

        var gate = Gatekeeper.Evaluate(dossier, next, nobody);
        return gate.State is StageState.Waiting or StageState.Blocked or StageState.Later
            ? new(
                next.Title,
                gate.State,
                gate.State == StageState.Waiting ? gate.OpensAt : null,
                string.Join("; ", gate.Unmet.Select(c => c.Because))
            )
            : new(next.Title, StageState.Open);
    }
}
