using Traceability.Domain.Records;

namespace Traceability.Domain.Gates;

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
    /// <summary>Why the lot was retired; null while it is in use.</summary>
    public string? RetiredBecause { get; init; }

    /// <inheritdoc/>
    public override string Name => Lot.Number;
}
