using Traceability.Domain.Records;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.FilmLots;

/// <summary>One stage of a film lot.</summary>
/// <param name="Stage" example="ring-resonance">The stage's code.</param>
/// <param name="Title" example="Resonance on the ring">Its title.</param>
/// <param name="Reached" example="40">How many had a first verdict there.</param>
/// <param name="Failed" example="3">How many of those failed.</param>
/// <param name="Value" example="0.925">The share that passed, 0 to 1.</param>
/// <param name="Lower" example="0.801">Lower end of its 95 % interval, 0 to 1.</param>
/// <param name="Upper" example="0.974">Upper end of its 95 % interval, 0 to 1.</param>
public sealed record FilmLotStage(string Stage, string Title, int Reached, int Failed, double Value, double Lower, double Upper);

/// <summary>
/// One film lot: what became of its diaphragms, and how that compares with all other lots of the answer. From the capsule on, a capsule or
/// unit with two diaphragms of the lot counts once.
/// </summary>
/// <param name="Lot" example="F-2603">The lot's number.</param>
/// <param name="Supplier" example="Invented Films">Who supplied it.</param>
/// <param name="State" example="released">quarantined, released or rejected.</param>
/// <param name="Held" example="false">True while a hold stops it.</param>
/// <param name="Started" example="42">Diaphragms whose film was fitted in the period.</param>
/// <param name="InWork" example="2">The same as onItsWay, under its older name.</param>
/// <param name="OnItsWay" example="2">Neither failed nor through yet.</param>
/// <param name="Judged" example="40">Those that came to a verdict.</param>
/// <param name="PassedFirst" example="35">Passed everything at the first attempt.</param>
/// <param name="PassedAfterRework" example="2">Passed in the end.</param>
/// <param name="Failed" example="5">First failed somewhere.</param>
/// <param name="FailedAt">How many first failed at each place.</param>
/// <param name="Stages">Each stage with its share.</param>
/// <param name="Counted" example="capsules">What is counted from the capsule on.</param>
/// <param name="FirstPassYield">The product over the stages of the shares that passed.</param>
/// <param name="RolledThroughputYield">The same with the number of stages.</param>
/// <param name="AgainstTheRest">Its odds of failing against those of all other lots.</param>
/// <param name="WithinStrata">The same inside groups of like parts.</param>
/// <param name="Stratified" example="true">True when the groups are told apart by more than the stage.</param>
/// <param name="P" example="0.003">p of the comparison that counts, 0 to 1.</param>
/// <param name="AdjustedP" example="0.021">The same, adjusted over all lots (Benjamini-Hochberg), 0 to 1.</param>
/// <param name="Worse" example="true">True when it fails more often than the rest and adjusted p is at most 0.05.</param>
/// <param name="Capsules" example="20">Capsules with film of the lot.</param>
/// <param name="Units" example="18">Units with film of the lot.</param>
/// <param name="UnitsShipped" example="11">Units of these that ever left.</param>
/// <param name="UnitsReturned" example="1">Units of these that ever came back.</param>
/// <param name="UnitsWithCustomers" example="10">Units of these that are with customers now.</param>
/// <param name="LastFailure" example="2026-11-20T13:40:00Z">When the latest failure was found; null without one.</param>
/// <param name="Sentence" example="5 of 40 diaphragms failed, 3 of them at the ring">The line in words.</param>
public sealed record FilmLotRow(
    string Lot,
    string Supplier,
    [property: OneOf(typeof(LotState))] string State,
    bool Held,
    int Started,
    int InWork,
    int OnItsWay,
    int Judged,
    int PassedFirst,
    int PassedAfterRework,
    int Failed,
    IReadOnlyDictionary<string, int> FailedAt,
    IReadOnlyList<FilmLotStage> Stages,
    string Counted,
    Share FirstPassYield,
    Share RolledThroughputYield,
    Comparison AgainstTheRest,
    Comparison WithinStrata,
    bool Stratified,
    double? P,
    double? AdjustedP,
    bool Worse,
    int Capsules,
    int Units,
    int UnitsShipped,
    int UnitsReturned,
    int UnitsWithCustomers,
    DateTimeOffset? LastFailure,
    string Sentence
);

/// <summary>All film lots of a period, worst first, with how the figures were computed and on how many they stand.</summary>
/// <param name="From" example="2025-11-30T00:00:00Z">Beginning of the period.</param>
/// <param name="To" example="2026-11-30T00:00:00Z">End of the period.</param>
/// <param name="Model" example="TARN-1">The model asked for; null for all.</param>
/// <param name="Stage" example="ring-resonance">The stage or place asked for; null for all.</param>
/// <param name="Interval" example="wilson">How intervals of shares are made: wilson or clopper-pearson.</param>
/// <param name="StratifiedBy" example="builder">What else the comparison is made inside of: builder, week or none.</param>
/// <param name="Strata" example="12">How many such groups there are.</param>
/// <param name="Diaphragms" example="310">Diaphragms counted.</param>
/// <param name="All">The yield of all lots together.</param>
/// <param name="Computed" example="Each share has its 95 % interval; lots are compared by the exact test.">
/// How the figures are computed, in words.
/// </param>
/// <param name="Items">The lots, worst first.</param>
/// <param name="Next" example="Mzc">Cursor of the next page; null at the end.</param>
public sealed record FilmLotAnswer(
    DateTimeOffset From,
    DateTimeOffset To,
    string? Model,
    string? Stage,
    string Interval,
    string StratifiedBy,
    int Strata,
    int Diaphragms,
    Share All,
    string Computed,
    IReadOnlyList<FilmLotRow> Items,
    string? Next
);
