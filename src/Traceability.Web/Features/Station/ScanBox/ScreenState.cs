using Traceability.Domain.Scanning;

namespace Traceability.Web.Features.Station.ScanBox;

/// <summary>
/// What a screen at a bench remembers: the session of the state machine, the latest scans (so that one sent twice is taken once, and one
/// sent ahead answers what the scan before it left), and a scan that came when the sign-in had ended, kept until the PIN is typed. Never
/// a PIN.
/// </summary>
public sealed record ScreenState(StationSession Session, string? Kept)
{
    private const int ScansRemembered = 30;

    /// <summary>A screen that nobody has used yet.</summary>
    public static readonly ScreenState Empty = new(StationSession.Empty, null);

    /// <summary>The scans taken last.</summary>
    public IReadOnlyList<TakenScan> Scans { get; init; } = [];

    /// <summary>
    /// The situation in which the last prompt was given; in another one the prompt may hold no longer. Null when it holds in any.
    /// </summary>
    public string? SituationAtPrompt { get; init; }

    /// <summary>How often in a row the station has refused in the same words.</summary>
    public int Refusals { get; init; }

    /// <summary>Whether the scan with this key was taken.</summary>
    public bool HasTaken(string key) => Scans.Any(scan => scan.Key == key);

    /// <summary>What was awaited when the scan with this key had been taken; null when it never was.</summary>
    public Awaited? LeftBy(string key) => Scans.FirstOrDefault(scan => scan.Key == key)?.Left;

    /// <summary>The state once the scan with this key was taken.</summary>
    public ScreenState With(StationAnswer answer, string key) =>
        this with
        {
            Session = answer.Session,
            Scans = [.. Scans.TakeLast(ScansRemembered - 1), new(key, Awaited.Of(answer.Session, answer.Needs))],
            SituationAtPrompt = Situation(answer.Session, answer.Needs),
            Refusals =
                answer.Session.Last is not { Severity: Severity.Refused } refused ? 0
                : refused == Session.Last ? Refusals + 1
                : 1,
        };

    /// <summary>All that the next prompt depends on, time too.</summary>
    public static string Situation(StationSession session, StageNeeds? needs)
    {
        var awaited = Awaited.Of(session, needs);
        var bars = needs switch
        {
            { Gate: GateSign.Blocked } => needs.GateWords,
            { Bar: { Sign: GateSign.Blocked } bar } => bar.Words,
            _ => "",
        };
        return $"{awaited.Part} {awaited.Attempt} {awaited.Prompt} {needs?.Gate} {needs?.Bar?.Sign} {bars}";
    }
}

/// <summary>A scan that was taken, and what was awaited after it.</summary>
public sealed record TakenScan(string Key, Awaited Left);
