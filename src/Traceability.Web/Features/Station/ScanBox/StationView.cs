using Traceability.Domain.Gates;
using Traceability.Domain.Routes;
using Traceability.Domain.Scanning;
using Traceability.Web.Features.Station.Mates;

namespace Traceability.Web.Features.Station.ScanBox;

/// <summary>All that the station page shows.</summary>
/// <param name="Screen">What this screen remembers.</param>
/// <param name="Actor">Who is signed in.</param>
/// <param name="Part">The part on the bench.</param>
/// <param name="People">Names of the people behind what is shown.</param>
/// <param name="Items">Serials and lot numbers of what is fitted.</param>
/// <param name="LoadSerials">The parts of the run that the part on the bench belongs to.</param>
/// <param name="Stations">The stations to choose from, while somebody is signed in and none was scanned.</param>
/// <param name="Result">What the open attempt would come to, once nothing is missing; or, while nothing is open, what the last one came
/// to.</param>
/// <param name="NobodyKnown">True in an empty store, where no badge can be scanned.</param>
public sealed record StationView(
    ScreenState Screen,
    Actor? Actor,
    PartAtBench? Part,
    IReadOnlyDictionary<Guid, string> People,
    IReadOnlyDictionary<Guid, string> Items,
    IReadOnlyList<string> LoadSerials,
    StationResult? Result,
    IReadOnlyList<Domain.Records.Station> Stations,
    bool NobodyKnown
)
{
    /// <summary>
    /// Free parts that go with what is in the matched positions, best first, and the best pairs; null when the next slot asks for none.
    /// </summary>
    public MatesAnswer? Mates { get; init; }

    /// <summary>For each kind of instrument that the stage asks for and nobody has scanned: the codes that may be used today.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<string>> InstrumentsToScan { get; init; } =
        new Dictionary<string, IReadOnlyList<string>>();

    public StationSession Session => Screen.Session;

    /// <summary>True while somebody signed in has to say where they are.</summary>
    public bool AsksStation => Actor is not null && Session.Station is null && Part is null;

    /// <summary>What the station says: what came of the last scan, as long as things stand as they stood then.</summary>
    public required Prompt Prompt { get; init; }

    /// <summary>What the next scan from this page answers.</summary>
    public Awaited Awaits => Awaited.Of(Session, Part?.Needs);

    /// <summary>How often in a row the same was refused.</summary>
    public int Refusals => Prompt == Session.Last && Prompt.Severity == Severity.Refused ? Screen.Refusals : 0;

    /// <summary>True while the box must hide what is typed.</summary>
    public bool Secret => Session.Asks == Question.Pin;

    /// <summary>A scan kept from before the sign-in ended, offered again once the PIN was right.</summary>
    public string? Offered => Secret || Session.Badge is null ? null : Screen.Kept;

    /// <summary>The value that a plain number would be taken for.</summary>
    public MissingCharacteristic? Expected =>
        Session.Asks switch
        {
            Question.CorrectValue => Part?.Needs.Taken.FirstOrDefault(taken => taken.Id == Session.Correcting?.ReadingId)?.What,
            Question.None when Part is { Open: not null, Needs: var needs } => StationDesk.Expected(Session, needs),
            _ => null,
        };

    /// <summary>The smallest step that makes sense for the expected value.</summary>
    public Characteristic? ExpectedCharacteristic => Expected is { } expected ? Part!.Stage!.Characteristic(expected.Name) : null;

    /// <summary>The slot that the next part or lot would fill.</summary>
    public string? NextPosition =>
        Session.ChosenPosition ?? (Expected is null ? Part?.Needs.Slots.FirstOrDefault(s => s.IsRequired)?.Position : null);

    /// <summary>The lines of the action sheet that make sense now, offered as buttons too.</summary>
    public IEnumerable<StationAction> Actions =>
        Session switch
        {
            { Asks: Question.Pin } => [StationAction.No],
            { Asks: Question.AbandonReason } => [StationAction.Mistyped, StationAction.No],
            { Asks: Question.CorrectValue } => [StationAction.Next, StationAction.Back, StationAction.No],
            { Asks: Question.CorrectReason } => [StationAction.Mistyped, StationAction.Back, StationAction.No],
            { Badge: null } => [],
            { AttemptId: not null, LoadId: not null } =>
            [
                StationAction.LoadClose,
                StationAction.Done,
                StationAction.Next,
                StationAction.Correct,
                StationAction.Abandon,
                StationAction.Clear,
                StationAction.Help,
            ],
            { AttemptId: not null } =>
            [
                StationAction.Done,
                StationAction.Next,
                StationAction.Correct,
                StationAction.Abandon,
                StationAction.Clear,
                StationAction.Help,
            ],
            { LoadParts.Count: > 0 } => [StationAction.LoadStart, StationAction.Clear, StationAction.Help],
            { Part: not null, Repeats: null } when Part?.Needs.Repeatable is not null =>
            [
                StationAction.Start,
                StationAction.Again,
                StationAction.Clear,
                StationAction.Help,
            ],
            { Part: not null } when Part?.Needs.MayRunAsLoad == true =>
            [
                StationAction.Start,
                StationAction.LoadStart,
                StationAction.Clear,
                StationAction.Help,
            ],
            { Part: not null } => [StationAction.Start, StationAction.Clear, StationAction.Help],
            _ => [StationAction.Help, StationAction.SignOut],
        };
}
