using Traceability.Domain.Routes;

namespace Traceability.Web.Features.Station.Mates;

/// <summary>
/// The mates by rank, and the best pairing of all free parts: as many pairs within the limits as can be, and among those the closest.
/// </summary>
/// <param name="Serial" example="CD26-00034">The part that is being built.</param>
/// <param name="Position" example="rear-diaphragm">The position for which a part is wanted.</param>
/// <param name="Characteristic" example="ringResonanceHz">The characteristic in which the parts must match.</param>
/// <param name="Unit" example="Hz">The unit of that characteristic.</param>
/// <param name="MaximumDifference" example="20">The largest difference allowed, in that unit.</param>
/// <param name="Further">Further characteristics in which they must match.</param>
/// <param name="OneFilmLot" example="true">Whether they must be made of one film lot.</param>
/// <param name="Against">What is, or is about to be, in the other matched positions.</param>
/// <param name="Mates">Free parts, best first.</param>
/// <param name="Pairs">The best pairing of all free parts, closest first.</param>
public sealed record MatesAnswer(
    string Serial,
    string Position,
    string Characteristic,
    string Unit,
    decimal MaximumDifference,
    IReadOnlyList<MatchLimit> Further,
    bool OneFilmLot,
    IReadOnlyList<MateValue> Against,
    IReadOnlyList<Mate> Mates,
    IReadOnlyList<MatePair> Pairs
);

/// <summary>A part in one of the matched positions.</summary>
/// <param name="Serial" example="DD26-00412">The part's serial.</param>
/// <param name="Value" example="905.2">Its value, in the unit of the answer.</param>
/// <param name="FilmLot" example="FL-2611">The film lot that it is made of.</param>
public sealed record MateValue(string Serial, decimal Value, string? FilmLot = null);

/// <summary>A free part and how well it matches.</summary>
/// <param name="Serial" example="DD26-00417">The part's serial.</param>
/// <param name="Value" example="911.9">Its value, in the unit of the answer.</param>
/// <param name="Difference" example="6.7">The largest difference from the others, in that unit; null when there are none.</param>
/// <param name="Within" example="true">Whether it is within all limits; null when there are no others.</param>
/// <param name="Further">Its values of the further characteristics.</param>
/// <param name="FilmLot" example="FL-2611">The film lot that it is made of.</param>
/// <param name="SameFilmLot" example="true">Whether that is the film lot of the others; null where none is known.</param>
/// <param name="Distance" example="0.335">
/// How unlike the worst of the others it is: 0 = equal, 1 = as unlike as one of the differences may be.
/// </param>
public sealed record Mate(
    string Serial,
    decimal Value,
    decimal? Difference,
    bool? Within,
    IReadOnlyList<FurtherValue> Further,
    string? FilmLot,
    bool? SameFilmLot,
    double? Distance
);

/// <summary>A part's value of a further characteristic.</summary>
/// <param name="Characteristic" example="ringTensionNm">The characteristic.</param>
/// <param name="Unit" example="N/m">The unit.</param>
/// <param name="Value" example="61.4">The part's value.</param>
/// <param name="Difference" example="1.2">The largest difference from the others; null when there are none.</param>
/// <param name="MaximumDifference" example="3.5">The largest difference allowed.</param>
public sealed record FurtherValue(string Characteristic, string Unit, decimal Value, decimal? Difference, decimal MaximumDifference);

/// <summary>Two free parts that go together.</summary>
/// <param name="First" example="DD26-00417">The serial of the one.</param>
/// <param name="Second" example="DD26-00420">The serial of the other.</param>
/// <param name="Difference" example="2.1">Their difference, in the unit of the answer.</param>
/// <param name="Further">Their differences in the further characteristics, in the order of the answer.</param>
/// <param name="SameFilmLot" example="true">Whether both are of one film lot; null where none is known.</param>
/// <param name="Distance" example="0.105">0 = equal, 1 = as unlike as one of the differences may be.</param>
public sealed record MatePair(
    string First,
    string Second,
    decimal Difference,
    IReadOnlyList<decimal?> Further,
    bool? SameFilmLot,
    double Distance
);
