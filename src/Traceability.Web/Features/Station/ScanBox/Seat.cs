using Traceability.Domain.Scanning;

namespace Traceability.Web.Features.Station.ScanBox;

/// <summary>
/// What a screen at a bench remembers: the session of the state machine, the keys of the scans it has taken (so that one sent twice is taken once),
/// and a scan that came when the sign-in had ended, kept until the PIN is typed. Never a PIN.
/// </summary>
public sealed record Seat(StationSession Session, IReadOnlyList<string> Taken, string? Kept)
{
    private const int KeysRemembered = 30;

    /// <summary>A screen that nobody has used yet.</summary>
    public static readonly Seat Empty = new(StationSession.Empty, [], null);

    /// <summary>The seat once the scan with this key was taken.</summary>
    public Seat With(StationSession session, string key) => this with { Session = session, Taken = [.. Taken.TakeLast(KeysRemembered - 1), key] };
}
