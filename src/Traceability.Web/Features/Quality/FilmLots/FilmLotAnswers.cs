using Traceability.Domain.Records;
using Traceability.Web.Features.Quality.Analyses;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Quality.FilmLots;

/// <summary>
/// One stage of a film lot: how many reached it and how many of those failed there. <c>Value</c> is the share that passed, (reached -
/// failed)/reached, and <c>Lower</c> to <c>Upper</c> its interval.
/// </summary>
public sealed record FilmLotStage(string Stage, string Title, int Reached, int Failed, double Value, double Lower, double Upper);

/// <summary>
/// One film lot: what became of its diaphragms, and how that compares with all other lots of the answer. <c>Counted</c> says what is
/// counted from the capsule on: a capsule (or unit) with two diaphragms of the lot counts once. <c>OnItsWay</c> (and <c>InWork</c>, its
/// older name) have neither failed nor got through; <c>Judged</c> came to a verdict. Both yields are the product over <c>Stages</c>,
/// without the field unless that was asked about. <c>UnitsShipped</c> and <c>UnitsReturned</c> ever did; <c>UnitsWithCustomers</c> are
/// there now with film of the lot inside.
/// </summary>
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

/// <summary>
/// All film lots of a period, worst first, with the yield of all together, how the figures were computed and on how many they stand.
/// </summary>
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
