using System.Globalization;
using System.Text.Json;
using Traceability.Domain.Codes;
using Traceability.Domain.Scanning;

namespace Traceability.Domain.Tests.Scanning;

/// <summary>A bench with a small invented workshop behind it: does what the station orders and keeps a list of it.</summary>
internal sealed class WalkThrough(params StageNeeds[] stages)
{
    private readonly Dictionary<string, StageNeeds> _needs = stages.ToDictionary(stage => stage.Part);
    private readonly Dictionary<string, Scan> _known = new(StringComparer.OrdinalIgnoreCase);

    public StationSession Session { get; private set; } = StationSession.Empty;

    public List<StationCommand> Orders { get; } = [];

    public Prompt Last { get; private set; } = new(Severity.Ask, "");

    public string RightPin { get; init; } = "1111";

    /// <summary>Answers an order with a refusal instead of doing it.</summary>
    public Func<StationCommand, ScanOutcome?> Refusing { get; init; } = _ => null;

    /// <summary>Every session as it was kept and every prompt as it was said, those between an order and its outcome too.</summary>
    public List<string> Kept { get; } = [];

    public string Json => JsonSerializer.Serialize(Session);

    public WalkThrough Knowing(Scan scan, params string[] names)
    {
        foreach (var name in names)
            _known[name] = scan;
        return this;
    }

    public WalkThrough KnowingLots(string lotKind, params string[] numbers)
    {
        foreach (var number in numbers)
            _known[number] = new Scan.Lot(number, lotKind);
        return this;
    }

    public WalkThrough KnowingParts(string partKind, params string[] serials)
    {
        foreach (var serial in serials)
            _known[serial] = new Scan.Part(serial, partKind);
        return this;
    }

    /// <summary>Types a line and Enter; the session goes through JSON every time, as it does in the service.</summary>
    public Prompt Type(string line)
    {
        Take(ScanParser.Parse(line), depth: 0);
        Session = JsonSerializer.Deserialize<StationSession>(Json)!;
        return Last;
    }

    /// <summary>Scans the printed code of something.</summary>
    public Prompt Scan(CodeKind kind, string id) => Type(PrintedCode.For(kind, id).Text);

    public WalkThrough SignedIn(string badge = "BUILD1", string station = "BENCH-1")
    {
        Scan(CodeKind.Badge, badge);
        Type(RightPin);
        Scan(CodeKind.Station, station);
        return this;
    }

    /// <summary>The stage that a part comes to when the one it is at is closed; its route's end where none is named.</summary>
    public Dictionary<string, StageNeeds> Then { get; } = [];

    /// <summary>What a stage that was passed needs when it is run once more, by part.</summary>
    public Dictionary<string, StageNeeds> OnceMore { get; } = [];

    private StageNeeds? Needs =>
        Session.Part is not { } part ? null
        : Session.Repeats is not null && Session.AttemptId is null && OnceMore.TryGetValue(part, out var again) ? again
        : _needs.GetValueOrDefault(part);

    private void Take(Scan scan, int depth)
    {
        Apply(StationDesk.Take(Session, scan, Needs));
        if (Orders is [.., StationCommand.LookUp lookUp] && Last.Line == "Looking it up.")
        {
            Orders.RemoveAt(Orders.Count - 1);
            if (depth == 0 && Found(lookUp.What) is { } found)
                Take(found, depth + 1);
            else
                Answer(new ScanOutcome.Unknown(Name(lookUp.What)));
        }
    }

    private Scan? Found(Scan what) => _known.GetValueOrDefault(Name(what));

    private static string Name(Scan what) =>
        what switch
        {
            Scan.Part part => part.Serial,
            Scan.Lot lot => lot.Code,
            Scan.Instrument instrument => instrument.Code,
            Scan.Carrier carrier => carrier.Code,
            Scan.Bare bare => bare.Text,
            _ => "",
        };

    private void Apply(StationStep step)
    {
        Remember(step);
        if (step.Command is StationCommand.Nothing)
            return;
        Orders.Add(step.Command);
        if (Refusing(step.Command) is { } refusal)
            Answer(refusal);
        else
            Do(step.Command);
    }

    private void Answer(ScanOutcome outcome)
    {
        Remember(StationDesk.After(Session, outcome, Needs));
    }

    private void Remember(StationStep step)
    {
        (Session, Last) = (step.Session, step.Prompt);
        Kept.Add(Json + Last);
    }

    private void Do(StationCommand command)
    {
        switch (command)
        {
            case StationCommand.Identify identify when identify.Pin.Reveal() == RightPin:
                Answer(new ScanOutcome.Identified(identify.Badge, "A. Builder"));
                break;
            case StationCommand.Identify:
                Answer(new ScanOutcome.NotIdentified("That PIN is not right."));
                break;
            case StationCommand.ShowPart show when !_needs.ContainsKey(show.Serial):
                Answer(new ScanOutcome.Refused($"{show.Serial} is not known here."));
                break;
            case StationCommand.ShowPart:
                Answer(new ScanOutcome.Shown());
                break;
            case StationCommand.OpenAttempt open:
                Change(open.Part, needs => needs with { AttemptId = IdOf(open.Part) });
                Answer(new ScanOutcome.Opened(IdOf(open.Part)));
                break;
            case StationCommand.RecordReading reading:
                Change(
                    Session.Part!,
                    needs =>
                        needs with
                        {
                            Characteristics = [.. needs.Characteristics.Where(c => c.Name != reading.Characteristic)],
                            Taken =
                            [
                                .. needs.Taken,
                                .. needs
                                    .Characteristics.Where(c => c.Name == reading.Characteristic)
                                    .Select(c => new TakenReading(IdOf(c.Name), c, reading.Value.Digits, IsMet(c, reading.Value.Value))),
                            ],
                        }
                );
                Answer(new ScanOutcome.Kept());
                break;
            case StationCommand.CorrectReading wrong:
                Change(
                    Session.Part!,
                    needs =>
                        needs with
                        {
                            Taken =
                            [
                                .. needs.Taken.Select(taken =>
                                    taken.Id == wrong.ReadingId
                                        ? taken with
                                        {
                                            Digits = wrong.Digits,
                                            IsMet = IsMet(taken.What, decimal.Parse(wrong.Digits, CultureInfo.InvariantCulture)),
                                        }
                                        : taken
                                ),
                            ],
                        }
                );
                Answer(new ScanOutcome.Kept());
                break;
            case StationCommand.Fit fit:
                Change(Session.Part!, needs => needs with { Slots = [.. needs.Slots.Where(slot => slot.Position != fit.Position)] });
                Answer(new ScanOutcome.Kept());
                break;
            case StationCommand.StartLoad load:
                foreach (var part in load.Parts)
                    Change(part, needs => needs with { AttemptId = IdOf(part), LoadId = IdOf("load") });
                Answer(new ScanOutcome.LoadStarted(IdOf("load")));
                break;
            case StationCommand.CloseAttempt or StationCommand.CloseLoad:
                Change(
                    Session.Part!,
                    needs =>
                        Then.GetValueOrDefault(needs.Part)
                        ?? needs with
                        {
                            AttemptId = null,
                            LoadId = null,
                            Gate = GateSign.Blocked,
                            GateWords = "The route is at its end.",
                        }
                );
                Answer(new ScanOutcome.Closed(true, "Passed."));
                break;
            case StationCommand.Abandon:
                Change(Session.Part!, needs => needs with { AttemptId = null });
                Answer(new ScanOutcome.Abandoned());
                break;
        }
    }

    private static bool IsMet(MissingCharacteristic what, decimal value) => !(value < what.Lower || value > what.Upper);

    private void Change(string part, Func<StageNeeds, StageNeeds> change)
    {
        if (_needs.TryGetValue(part, out var needs))
            _needs[part] = change(needs);
    }

    public static Guid IdOf(string name) => new(Domain.Ledger.Digest.Of(System.Text.Encoding.UTF8.GetBytes(name)).Bytes[..16]);
}
