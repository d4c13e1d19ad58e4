using Traceability.Domain.Records;
using Traceability.Domain.Routes;

namespace Traceability.Domain.Stages.Methods;

/// <summary>What a method is given.</summary>
/// <param name="Stage">The stage with its limits and parameters.</param>
/// <param name="Entered">Values entered in this attempt, by characteristic; corrections applied.</param>
/// <param name="Evidence">The files of this attempt, or of its load; the latest under each name.</param>
/// <param name="OpenedAt">When the attempt began; UTC.</param>
/// <param name="ClosedAt">When it ends; UTC.</param>
/// <param name="Earlier">The counting value of a characteristic from an earlier stage of the same part, or null.</param>
public sealed record StageInput(
    Stage Stage,
    IReadOnlyDictionary<string, decimal> Entered,
    IReadOnlyList<EvidenceFile> Evidence,
    DateTimeOffset OpenedAt,
    DateTimeOffset ClosedAt,
    Func<string, decimal?> Earlier
)
{
    /// <summary>Which attempt at the stage this is, from 1.</summary>
    public int AttemptNumber { get; init; } = 1;

    /// <summary>Names of the entered values that are only bounds from below (">400").</summary>
    public IReadOnlySet<string> LowerBounds { get; init; } = new HashSet<string>();

    /// <summary>When the entered values were read; UTC. What was recorded in one go bears the moment at which the attempt began.</summary>
    public IReadOnlyDictionary<string, DateTimeOffset> ReadAt { get; init; } = new Dictionary<string, DateTimeOffset>();

    /// <summary>What is fitted in the part, by position; only for methods with <see cref="StageMethod.ReadsInside"/>.</summary>
    public IReadOnlyDictionary<string, FittedThing> Inside { get; init; } = new Dictionary<string, FittedThing>();

    /// <summary>The instruments used, with the constants of the calibration then in force.</summary>
    public IReadOnlyList<InstrumentInUse> Instruments { get; init; } = [];

    /// <summary>The film lot fitted in the part, or null.</summary>
    public Lot? Film => Inside.Values.OfType<FittedLot>().Select(l => l.Lot).FirstOrDefault(l => l.Kind == Lot.FilmKind);

    /// <summary>The entered value, or null when it was left open.</summary>
    public decimal? Value(string characteristic) => Entered.TryGetValue(characteristic, out var value) ? value : null;

    /// <summary>The method that judges it; null before it does.</summary>
    internal StageMethod? Method { get; init; }

    /// <summary>A number of the route, or null.</summary>
    /// <exception cref="InvalidOperationException">The method that judges does not say that it reads that number.</exception>
    public decimal? Number(string name) =>
        Method is { } method && !method.Parameters.Any(p => p.IsNumber && p.Name == name)
            ? throw new InvalidOperationException($"method {method.Name} does not say that it reads the number '{name}'")
        : Stage.Parameters.Numbers.TryGetValue(name, out var value) ? value
        : null;

    /// <summary>A constant of the calibration of an instrument in use, else the route's number of the same name, or null.</summary>
    public decimal? Constant(string name) =>
        Instruments.Select(i => i.Constants.TryGetValue(name, out var value) ? value : (decimal?)null).FirstOrDefault(v => v is not null)
        ?? Number(name);

    /// <summary>The file under that name, or null.</summary>
    public EvidenceFile? File(string name) => Evidence.LastOrDefault(e => e.Name == name);
}

/// <summary>An instrument used in an attempt, with the named constants of the calibration then in force.</summary>
public sealed record InstrumentInUse(string Code, string Kind, IReadOnlyDictionary<string, decimal> Constants);
