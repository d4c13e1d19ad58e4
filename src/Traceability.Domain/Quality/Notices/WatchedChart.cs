namespace Traceability.Domain.Quality.Notices;

/// <summary>One value of a watched characteristic, as it counts now.</summary>
/// <param name="ReadingId">Its reading.</param>
/// <param name="Serial">The part.</param>
/// <param name="At">When the attempt was opened, by which points are in order.</param>
/// <param name="KnownAt">When this value became known here: the attempt came to its verdict, or the reading was corrected. It may be much
/// later than <paramref name="At"/>.</param>
/// <param name="Value">In the unit of the characteristic.</param>
public sealed record WatchedPoint(Guid ReadingId, string Serial, DateTimeOffset At, DateTimeOffset KnownAt, double Value);

/// <summary>The latest values of one characteristic at one stage of one route.</summary>
/// <param name="Kind">Kind of part.</param>
/// <param name="Model">Model.</param>
/// <param name="Stage">Stage code.</param>
/// <param name="Characteristic">Name of the characteristic.</param>
/// <param name="Points">In the order of work.</param>
public sealed record WatchedChart(string Kind, string Model, string Stage, string Characteristic, IReadOnlyList<WatchedPoint> Points)
{
    /// <summary>The fewest values from which limits are drawn to raise notices by. Common practice, no source.</summary>
    public const int FewestValues = 20;

    /// <summary>True when there are enough values to watch it.</summary>
    public bool IsWatched => Points.Count >= FewestValues;
}

/// <summary>A film lot as the comparison of all film lots leaves it.</summary>
/// <param name="Number">The lot.</param>
/// <param name="StandsOut">True when it fails more often than the rest, allowing for all lots compared.</param>
/// <param name="Failed">How many of its diaphragms failed, 0 or more.</param>
/// <param name="Judged">How many came to a verdict.</param>
/// <param name="LastFailedAt">When the latest of them first failed; null when none did.</param>
/// <param name="AdjustedP">P after the false-discovery correction; null when it was not compared.</param>
public sealed record ComparedLot(string Number, bool StandsOut, int Failed, int Judged, DateTimeOffset? LastFailedAt, double? AdjustedP);
