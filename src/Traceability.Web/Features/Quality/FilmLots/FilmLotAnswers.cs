using Traceability.Web.Features.Quality.Analyses;

namespace Traceability.Web.Features.Quality.FilmLots;

/// <summary>
/// One stage of a film lot: how many reached it and how many of those failed there. <c>Value</c> is the share that passed, (reached - failed)/reached, and
/// <c>Lower</c> to <c>Upper</c> its interval.
/// </summary>
public sealed record FilmLotStage(string Stage, string Title, int Reached, int Failed, double Value, double Lower, double Upper);

/// <summary>
/// One film lot: what became of its diaphragms, and how that compares with all other lots of the answer. <c>Counted</c> says what is counted from the capsule on: a capsule
/// (or unit) with two diaphragms of the lot counts once. <c>OnItsWay</c> (and <c>InWork</c>, its older name) have neither failed nor got through; <c>Judged</c> came to a verdict.
/// Both yields are the product over <c>Stages</c>, without the field unless that was asked about. <c>UnitsShipped</c> and <c>UnitsReturned</c> ever did;
/// <c>UnitsWithCustomers</c> are there now with film of the lot inside.
/// </summary>
public sealed record FilmLotRow(
    string Lot, string Supplier, string State, bool Held, int Started, int InWork, int OnItsWay, int Judged, int PassedFirst, int PassedAfterRework, int Failed, IReadOnlyDictionary<string, int> FailedAt,
    IReadOnlyList<FilmLotStage> Stages, string Counted, Share FirstPassYield, Share RolledThroughputYield, Comparison AgainstTheRest, Comparison WithinStrata, bool Stratified, double? P, double? AdjustedP,
    bool Worse, int Capsules, int Units, int UnitsShipped, int UnitsReturned, int UnitsWithCustomers, DateTimeOffset? LastFailure, string Sentence);

/// <summary>All film lots of a period, worst first, with the yield of all together, how the figures were computed and on how many they stand.</summary>
public sealed record FilmLotAnswer(
    DateTimeOffset From, DateTimeOffset To, string? Model, string? Stage, string Interval, string StratifiedBy, int Strata, int Diaphragms, Share All, string Computed, IReadOnlyList<FilmLotRow> Items, string? Next);

/// <summary>The same as a flat row of a table; <c>Stages</c> are written "capsule/insulation 2/12", failed of reached.</summary>
public sealed record FilmLotTableRow(
    string Lot, string Supplier, string State, int Started, int InWork, int Judged, int PassedFirst, int PassedAfterRework, int Failed,
    int FailedDiaphragm, int FailedCapsule, int FailedSoak, int FailedInsulation, int FailedAcoustic, int FailedFinal, int FailedField,
    double? FirstPassYield, double? FirstPassYieldLower, double? FirstPassYieldUpper, double? RolledThroughputYield, double? RolledThroughputYieldLower, double? RolledThroughputYieldUpper,
    double? OddsRatio, double? OddsRatioLower, double? OddsRatioUpper, double? P, double? AdjustedP, bool Worse, int Capsules, int Units, int UnitsShipped, int UnitsReturned,
    int UnitsWithCustomers, int OnItsWay, string Counted, string Stages, string Sentence)
{
    /// <summary>Flattens a row; the odds ratio is the one that belongs to p.</summary>
    public static FilmLotTableRow Of(FilmLotRow r)
    {
        var decisive = r.Stratified ? r.WithinStrata : r.AgainstTheRest;
        return new(
            r.Lot, r.Supplier, r.State, r.Started, r.InWork, r.Judged, r.PassedFirst, r.PassedAfterRework, r.Failed,
            At("diaphragm"), At("capsule"), At("soak"), At("insulation"), At("acoustic"), At("final"), At("field"),
            r.FirstPassYield.Value, r.FirstPassYield.Lower, r.FirstPassYield.Upper, r.RolledThroughputYield.Value, r.RolledThroughputYield.Lower, r.RolledThroughputYield.Upper,
            decisive.OddsRatio, decisive.Lower, decisive.Upper, r.P, r.AdjustedP, r.Worse, r.Capsules, r.Units, r.UnitsShipped, r.UnitsReturned,
            r.UnitsWithCustomers, r.OnItsWay, r.Counted, string.Join("; ", r.Stages.Select(s => $"{s.Stage} {s.Failed}/{s.Reached}")), r.Sentence);

        int At(string place) => r.FailedAt.GetValueOrDefault(place);
    }
}
