using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Work.BenchWork;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>What closing an attempt came to.</summary>
/// <param name="Attempt" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The attempt.</param>
/// <param name="Serial" example="US26-00034">The part's serial.</param>
/// <param name="Stage" example="insulation">The stage's code.</param>
/// <param name="Verdict" example="pass">The verdict: pass, fail or conditional.</param>
/// <param name="Readings">All readings, the computed ones among them.</param>
/// <param name="Findings">What was found, in words.</param>
/// <param name="Nonconformity">The nonconformity that the verdict raised, if any.</param>
/// <param name="Next">What comes next for the part.</param>
public sealed record ClosingAnswer(
    Guid Attempt,
    string Serial,
    string Stage,
    [property: OneOf(typeof(Verdict))] string Verdict,
    IReadOnlyList<ReadingAnswer> Readings,
    IReadOnlyList<string> Findings,
    NonconformityAnswer? Nonconformity,
    NextAnswer Next
)
{
    public static ClosingAnswer Of(
        Closing closing,
        Stage stage,
        Dossier after,
        GateContext context,
        IReadOnlyList<string>? besides = null
    ) =>
        new(
            closing.Ending.AttemptId,
            after.Part.Serial,
            stage.Code,
            Words.Of(closing.Verdict),
            [.. closing.Readings.Select(ReadingAnswer.Of)],
            [.. closing.Findings, .. besides ?? []],
            NonconformityAnswer.Of(closing.Nonconformity),
            NextAnswer.Of(after, context)
        );
}
