using Traceability.Web.Features.Quality.Analyses;

namespace Traceability.Web.Features.Quality.FilmLots;

/// <summary>One film lot: what became of its diaphragms, and how that compares with all other lots of the answer.</summary>
public sealed record FilmLotRow(
    string Lot, string Supplier, string State, int Started, int InWork, int Judged, int PassedFirst, int PassedAfterRework, int Failed, IReadOnlyDictionary<string, int> FailedAt,
    Share FirstPassYield, Share RolledThroughputYield, Comparison AgainstTheRest, Comparison WithinStrata, bool Stratified, double? P, double? AdjustedP, bool Worse,
    int Capsules, int Units, int UnitsShipped, int UnitsReturned, DateTimeOffset? LastFailure);

/// <summary>All film lots of a period, worst first, with how the figures were computed and on how many they stand.</summary>
public sealed record FilmLotAnswer(
    DateTimeOffset From, DateTimeOffset To, string? Model, string? Stage, string Interval, string StratifiedBy, int Strata, int Diaphragms, string Computed, IReadOnlyList<FilmLotRow> Items, string? Next);

/// <summary>The same as a flat row of a table.</summary>
public sealed record FilmLotTableRow(
    string Lot, string Supplier, string State, int Started, int InWork, int Judged, int PassedFirst, int PassedAfterRework, int Failed,
    int FailedDiaphragm, int FailedCapsule, int FailedSoak, int FailedInsulation, int FailedAcoustic, int FailedFinal, int FailedField,
    double? FirstPassYield, double? FirstPassYieldLower, double? FirstPassYieldUpper, double? RolledThroughputYield, double? RolledThroughputYieldLower, double? RolledThroughputYieldUpper,
    double? OddsRatio, double? OddsRatioLower, double? OddsRatioUpper, double? P, double? AdjustedP, bool Worse, int Capsules, int Units, int UnitsShipped, int UnitsReturned)
{
    /// <summary>Flattens a row; the odds ratio is the one that belongs to p.</summary>
    public static FilmLotTableRow Of(FilmLotRow r)
    {
        var decisive = r.Stratified ? r.WithinStrata : r.AgainstTheRest;
        return new(
            r.Lot, r.Supplier, r.State, r.Started, r.InWork, r.Judged, r.PassedFirst, r.PassedAfterRework, r.Failed,
            At("diaphragm"), At("capsule"), At("soak"), At("insulation"), At("acoustic"), At("final"), At("field"),
            r.FirstPassYield.Value, r.FirstPassYield.Lower, r.FirstPassYield.Upper, r.RolledThroughputYield.Value, r.RolledThroughputYield.Lower, r.RolledThroughputYield.Upper,
            decisive.OddsRatio, decisive.Lower, decisive.Upper, r.P, r.AdjustedP, r.Worse, r.Capsules, r.Units, r.UnitsShipped, r.UnitsReturned);

        int At(string place) => r.FailedAt.GetValueOrDefault(place);
    }
}
