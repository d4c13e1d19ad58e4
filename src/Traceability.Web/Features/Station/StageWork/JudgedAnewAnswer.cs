using Traceability.Domain.Records;
using Traceability.Domain.Work.BenchWork;
using Traceability.Web.Features.Parts.Work;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>An attempt that came out otherwise because something it was computed from was corrected.</summary>
/// <param name="Serial" example="US26-00034">The part's serial.</param>
/// <param name="Stage" example="final-acoustic">The stage's code.</param>
/// <param name="Attempt" example="1">Its number among the attempts of that part at that stage, from 1.</param>
/// <param name="VerdictBefore" example="pass">Its verdict before.</param>
/// <param name="VerdictAfter" example="fail">Its verdict now.</param>
/// <param name="Readings">The readings that were computed anew.</param>
/// <param name="Nonconformity">The nonconformity that the turned verdict raised, if any.</param>
public sealed record JudgedAnewAnswer(
    string Serial,
    string Stage,
    int Attempt,
    Verdict? VerdictBefore,
    Verdict? VerdictAfter,
    IReadOnlyList<ReadingAnswer> Readings,
    NonconformityAnswer? Nonconformity
)
{
    internal static JudgedAnewAnswer Of(JudgedAnew judged) =>
        new(
            judged.Serial,
            judged.Attempt.Stage,
            judged.Attempt.Attempt.Number,
            judged.Before,
            judged.After,
            [.. judged.Values.Select(v => ReadingAnswer.Of(judged.Attempt.Readings.First(r => r.Reading.Id == v.ReadingId)))],
            NonconformityAnswer.Of(judged.Nonconformity)
        );
}
