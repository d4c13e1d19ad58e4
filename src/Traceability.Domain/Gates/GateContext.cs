using Traceability.Domain.Records;
using Traceability.Domain.Values;

namespace Traceability.Domain.Gates;

/// <summary>The moment and the circumstances in which a gate is asked.</summary>
/// <param name="At">The moment at which the work starts or ends; UTC.</param>
/// <param name="Calendar">The workshop's calendar, which says what day a moment falls on.</param>
public sealed record GateContext(DateTimeOffset At, WorkshopCalendar Calendar)
{
    /// <summary>The workshop's day of that moment.</summary>
    public DateOnly Day => Calendar.DayOf(At);

    /// <summary>Who wants to work; null when the gate is only looked at.</summary>
    public Actor? Actor { get; init; }

    /// <summary>The instruments named; null when none were asked for yet.</summary>
    public IReadOnlyList<InstrumentStanding>? Instruments { get; init; }

    /// <summary>Everything fitted in the part by the end of the work, by position; for methods that look inside.</summary>
    public IReadOnlyDictionary<string, Input> Inside { get; init; } = new Dictionary<string, Input>();

    /// <summary>The named constants of the calibrations of the instruments in use, by calibration.</summary>
    public IReadOnlyDictionary<Guid, IReadOnlyDictionary<string, decimal>> CalibrationConstants { get; init; } =
        new Dictionary<Guid, IReadOnlyDictionary<string, decimal>>();

    /// <summary>What is fitted, and about to be fitted, by position; null when the work is only being opened.</summary>
    public IReadOnlyDictionary<string, Input>? Inputs { get; init; }
}

/// <summary>A signed-in person as the gates see them.</summary>
public sealed record Actor(
    Guid PersonId,
    string Badge,
    string Name,
    IReadOnlySet<Role> Roles,
    IReadOnlyList<QualificationGrant> Qualifications
)
{
    /// <summary>True when the person has the role.</summary>
    public bool Is(Role role) => Roles.Contains(role);

    /// <summary>True for a machine that acts under its own name: it works for whoever opened the attempt.</summary>
    public bool IsMachine => Is(Role.Instrument) && !Is(Role.Builder) && !Is(Role.Quality);

    /// <summary>True when the latest word on that qualification is a grant that has not run out on <paramref name="day"/>.</summary>
    public bool IsQualifiedFor(string code, DateOnly day) =>
        Qualifications.Where(q => q.Code == code).MaxBy(q => q.RecordedAt) is { Given: true } grant
        && (grant.ValidUntil is null || grant.ValidUntil >= day);
}

/// <summary>A candidate for a slot, or what is already in it.</summary>
public abstract record Input(string Position)
{
    /// <summary>What to call it: a serial or a lot number.</summary>
    public abstract string Name { get; }
}

/// <summary>
/// A part as an input. <c>FreeFor</c> says whether it is fitted nowhere else; <c>Values</c> its counting readings by characteristic.
/// </summary>
public sealed record PartInput(
    string Position,
    Guid PartId,
    string Serial,
    string Kind,
    string Model,
    PartState State,
    bool RouteFinished,
    string? FittedInSerial,
    IReadOnlyList<InsideProblem> Problems,
    IReadOnlyDictionary<string, decimal> Values,
    bool AlreadyFittedHere = false
) : Input(Position)
{
    /// <summary>A part as it stands in its dossier.</summary>
    public static PartInput Of(string position, Dossier part, bool fittedHere) =>
        new(
            position,
            part.Part.Id,
            part.Part.Serial,
            part.Part.Kind,
            part.Part.Model,
            part.State(),
            part.IsFinished(),
            part.Around.FittedInSerial,
            part.Around.Inside,
            part.Route.Stages.SelectMany(s => s.Characteristics)
                .Select(c => c.Name)
                .Distinct()
                .Select(name => (name, reading: part.CountingReading(name)))
                .Where(x => x.reading is not null)
                .ToDictionary(x => x.name, x => x.reading!.Value),
            fittedHere
        )
        {
            FilmLotId = part
                .PresentFittings.Values.FirstOrDefault(f => part.Route.Stages.Any(s => s.Slot(f.Position)?.LotKind == Lot.FilmKind))
                ?.LotId,
            InDoubt = part.Around.InDoubt,
        };

    /// <summary>
    /// A part as it stood inside another at a moment of recording, with the values that count now in the place of those corrected since.
    /// </summary>
    public static PartInput AsJudgedOn(string position, Dossier part, DateTimeOffset moment)
    {
        var then = Of(position, part.AsOf(moment), true);
        return then with { Values = then.Values.Keys.ToDictionary(name => name, name => part.ReadingThatCounted(moment, name)!.Value) };
    }

    /// <summary>The film lot that it is made of; null when it has none.</summary>
    public Guid? FilmLotId { get; init; }

    /// <summary>What was measured on it, or inside it, with an instrument in doubt.</summary>
    public IReadOnlyList<InDoubt> InDoubt { get; init; } = [];

    /// <summary>
    /// When the last thing happened to it (its last stage ended, it was taken out of another part); null when nobody asks.
    /// </summary>
    public DateTimeOffset? FreeSince { get; init; }

    /// <inheritdoc/>
    public override string Name => Serial;
}

/// <summary>A lot as an input.</summary>
public sealed record LotInput(
    string Position,
    Lot Lot,
    LotState State,
    IReadOnlyList<string> Holds,
    decimal? Quantity,
    bool AlreadyFittedHere = false
) : Input(Position)
{
    /// <inheritdoc/>
    public override string Name => Lot.Number;
}
