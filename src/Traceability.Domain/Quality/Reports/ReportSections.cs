using Traceability.Domain.Quality.Pareto;

namespace Traceability.Domain.Quality.Reports;

/// <summary>Units finished and shipped, all and by model.</summary>
/// <param name="Finished" example="12">Units that passed their last stage in the month.</param>
/// <param name="Shipped" example="10">Units that left in the month.</param>
/// <param name="SentAgain" example="1">Of those, units that had left before.</param>
/// <param name="ByModel">The same by model.</param>
/// <param name="None" example="None of these was found in March 2026.">What is said when there is nothing to list; null otherwise.</param>
/// <param name="Computed" example="Counted are units whose last stage ended in the month.">How the figures are computed.</param>
public sealed record OutputSection(
    int Finished,
    int Shipped,
    int SentAgain,
    IReadOnlyList<UnitOutput> ByModel,
    string? None,
    string Computed
);

/// <summary>
/// A stage's first-pass yield in the month and in the month before. <c>P</c> and <c>AdjustedP</c> are null where the two cannot be
/// compared.
/// </summary>
/// <param name="Kind" example="diaphragm">The kind of part.</param>
/// <param name="Stage" example="mount">The stage's code.</param>
/// <param name="Title" example="Mount in the jig">The stage in words.</param>
/// <param name="Share">First-pass yield of the month.</param>
/// <param name="Before">First-pass yield of the month before.</param>
/// <param name="P" example="0.21">Two-sided p of the change; null where the two cannot be compared.</param>
/// <param name="AdjustedP" example="0.63">The same, adjusted for the number of comparisons.</param>
/// <param name="Change" example="no change shown">The comparison in words.</param>
public sealed record StageYieldLine(
    string Kind,
    string Stage,
    string Title,
    ReportedShare Share,
    ReportedShare Before,
    double? P,
    double? AdjustedP,
    string Change
);

/// <summary>The yields of a model: over all its stages, and stage by stage.</summary>
/// <param name="Model" example="TARN-1">The model.</param>
/// <param name="FirstPass">First-pass yield over all stages, in the month.</param>
/// <param name="FirstPassBefore">The same in the month before.</param>
/// <param name="RolledThroughput">Product of the stages' first-pass yields, in the month.</param>
/// <param name="RolledThroughputBefore">The same in the month before.</param>
/// <param name="Stages">Stage by stage, in the order of the work.</param>
public sealed record ModelYield(
    string Model,
    ReportedShare FirstPass,
    ReportedShare FirstPassBefore,
    ReportedShare RolledThroughput,
    ReportedShare RolledThroughputBefore,
    IReadOnlyList<StageYieldLine> Stages
);

/// <summary>First-pass and rolled-throughput yields; <c>MonthBefore</c> names what they are compared with.</summary>
/// <param name="MonthBefore" example="2026-02">The month that is compared with.</param>
/// <param name="Models">Model by model.</param>
/// <param name="None" example="None of these was found in March 2026.">What is said when there is nothing to list; null otherwise.</param>
/// <param name="Computed" example="Counted are units whose last stage ended in the month.">How the figures are computed.</param>
public sealed record YieldSection(string MonthBefore, IReadOnlyList<ModelYield> Models, string? None, string Computed);

/// <summary>A stage of a film lot: how many reached it, and how many of those failed there.</summary>
/// <param name="Stage" example="mount">The stage's code.</param>
/// <param name="Title" example="Mount in the jig">The stage in words.</param>
/// <param name="Reached" example="24">How many reached the stage.</param>
/// <param name="Failed" example="2">How many of those failed there.</param>
public sealed record FilmStageLine(string Stage, string Title, int Reached, int Failed);

/// <summary>
/// One film lot: <c>InWork</c> are on their way, <c>Stages</c> in the order of the work, <c>FirstPass</c> the yield over them.
/// <c>Against</c> says in words how it compares with the rest, or why it cannot be compared; <c>Sentence</c> says the line.
/// </summary>
/// <param name="Lot" example="F-2603">The film lot's number.</param>
/// <param name="Started" example="24">Diaphragms whose film was fitted in the period.</param>
/// <param name="InWork" example="5">Of those, how many are on their way.</param>
/// <param name="Judged" example="19">Of those, how many failed or passed their last stage.</param>
/// <param name="Failed" example="3">Of those judged, how many failed.</param>
/// <param name="FailedAt">How many failed, by stage.</param>
/// <param name="Stages">The stages that they reached, in the order of the work.</param>
/// <param name="FirstPass">The yield over the stages.</param>
/// <param name="AdjustedP" example="0.04">
/// p of the comparison with the rest, adjusted for the number of lots; null where it cannot be made.
/// </param>
/// <param name="Against" example="fails more often than the rest">How it compares with the rest, in words.</param>
/// <param name="StandsOut" example="true">True when it fails more often than the rest.</param>
/// <param name="Sentence" example="F-2603: 3 of 19 failed.">The line as one sentence.</param>
public sealed record FilmLotLine(
    string Lot,
    int Started,
    int InWork,
    int Judged,
    int Failed,
    IReadOnlyDictionary<string, int> FailedAt,
    IReadOnlyList<FilmStageLine> Stages,
    ReportedShare FirstPass,
    double? AdjustedP,
    string Against,
    bool StandsOut,
    string Sentence
);

/// <summary>Film lots of the month, and those of the twelve months up to it that stand out.</summary>
/// <param name="Lots">Film lots used in the month.</param>
/// <param name="Year" example="April 2025 to March 2026">The twelve months up to the month, in words.</param>
/// <param name="OutstandingInTheYear">Film lots of those twelve months that stand out.</param>
/// <param name="None" example="None of these was found in March 2026.">What is said when there is nothing to list; null otherwise.</param>
/// <param name="Computed" example="Counted are units whose last stage ended in the month.">How the figures are computed.</param>
public sealed record FilmLotSection(
    IReadOnlyList<FilmLotLine> Lots,
    string Year,
    IReadOnlyList<FilmLotLine> OutstandingInTheYear,
    string? None,
    string Computed
);

/// <summary>Failure codes, the most frequent first.</summary>
/// <param name="Failures" example="14">Failures in the month.</param>
/// <param name="VitalFew" example="3">How many codes make up 80 % of them.</param>
/// <param name="Bars">Failure codes, the most frequent first.</param>
/// <param name="None" example="None of these was found in March 2026.">What is said when there is nothing to list; null otherwise.</param>
/// <param name="Computed" example="Counted are units whose last stage ended in the month.">How the figures are computed.</param>
public sealed record FailureSection(int Failures, int VitalFew, IReadOnlyList<ParetoBar> Bars, string? None, string Computed);
