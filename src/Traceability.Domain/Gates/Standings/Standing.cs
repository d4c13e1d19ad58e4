namespace Traceability.Domain.Gates.Standings;

/// <summary>
/// What a part is now, said in one place: every page, list, look-up answer, trace and answer of the interface takes it from here. What
/// stands in the way outranks what was passed. Checked by <c>StandingTests</c> and <c>StandingProperties</c>.
/// </summary>
/// <param name="Code">What it is: of several, the first in the order of <see cref="StandingCode"/>.</param>
/// <param name="Until">From when it may go on; only of what waits.</param>
/// <param name="Because">Why: what holds, blocks, quarantines or delays it, the complaint with which it came back, why it was
/// scrapped.</param>
/// <param name="Where">What it is fitted in; of what left the workshop the reference of who has it; else the title of its stage.</param>
public sealed record Standing(StandingCode Code, DateTimeOffset? Until = null, string? Because = null, string? Where = null)
{
    /// <summary>True when it only waits for the next person to work on it: in work, or finished and free.</summary>
    public bool MayGoOn => Code is StandingCode.InWork or StandingCode.Finished or StandingCode.Stock;

    /// <summary>What the part is at the moment of the context; who asks makes no difference.</summary>
    public static Standing Of(Dossier dossier, GateContext context) => Of(StandingGrounds.Of(dossier, context));

    /// <summary>What the part is on these grounds.</summary>
    public static Standing Of(StandingGrounds g)
    {
        var place = g.FittedIn ?? g.Stage?.Title;
        return g switch
        {
            { Exit.Scrapped: { } why } => new(StandingCode.Scrapped, null, why, g.Outermost),
            { Exit.Departure: { ReturnedAt: not null } gone } => new(
                StandingCode.Returned,
                null,
                Reasons([gone.Complaint, .. g.Stops]),
                Place(g.Outermost, gone.CustomerReference)
            ),
            { Exit.Departure: { } gone } => new(StandingCode.Shipped, null, Reasons(g.Stops), Place(g.Outermost, gone.CustomerReference)),
            { Holds.Count: > 0 } => new(StandingCode.Held, null, Reasons(g.Stops), place),
            { Quarantines.Count: > 0 } => new(StandingCode.Quarantined, null, Reasons(g.Stops), place),
            { Nonconformities.Count: > 0 } => new(StandingCode.Blocked, null, Reasons(g.Nonconformities), place),
            { FittedIn: { } parent } => new(StandingCode.Fitted, null, null, parent),
            { Stage: { State: StageState.Waiting } stage } => new(StandingCode.Waiting, stage.OpensAt, stage.Because, stage.Title),
            { Stage: { State: StageState.Blocked or StageState.Later } stage } => new(
                StandingCode.Blocked,
                null,
                stage.Because,
                stage.Title
            ),
            { Stage: { } stage } => new(StandingCode.InWork, null, null, stage.Title),
            _ => new(g.IsUnit ? StandingCode.Stock : StandingCode.Finished),
        };
    }

    private static string? Reasons(IEnumerable<string?> reasons) => Joined("; ", reasons);

    private static string? Place(params string?[] names) => Joined(", ", names);

    private static string? Joined(string by, IEnumerable<string?> parts) =>
        string.Join(by, parts.Where(p => !string.IsNullOrEmpty(p))) is { Length: > 0 } text ? text : null;
}
