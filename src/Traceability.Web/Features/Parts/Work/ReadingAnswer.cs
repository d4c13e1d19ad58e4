using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values.Limits;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>A reading, with the limits that judged it.</summary>
/// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c02">The reading's id, by which it is corrected.</param>
/// <param name="Characteristic" example="ringResonanceHz">The characteristic, as the route names it.</param>
/// <param name="Value" example="905.2">The value that counts now, with the digits that were entered.</param>
/// <param name="Unit" example="Hz">The unit of value and limits.</param>
/// <param name="Nominal" example="900">The nominal value.</param>
/// <param name="Lower" example="880">The lower limit.</param>
/// <param name="Upper" example="920">The upper limit.</param>
/// <param name="Met" example="true">Whether it is accepted.</param>
/// <param name="Source" example="entered">How it came: entered, instrument or computed.</param>
/// <param name="ExpandedUncertainty" example="0.8">The expanded uncertainty (k = 2), in the same unit, where the route states one.</param>
/// <param name="Conformity" example="met">The judgement with the uncertainty taken into account.</param>
/// <param name="ProbabilityOfConformance" example="0.9998">The probability that the true value is within the limits, 0 to 1.</param>
/// <param name="By">Who took it, where an answer names people.</param>
public sealed record ReadingAnswer(
    Guid Id,
    string Characteristic,
    NumberText Value,
    string Unit,
    decimal? Nominal,
    decimal? Lower,
    decimal? Upper,
    bool Met,
    [property: OneOf(typeof(ReadingSource))] string Source,
    decimal? ExpandedUncertainty = null,
    [property: OneOf(typeof(Conformity))] string? Conformity = null,
    double? ProbabilityOfConformance = null,
    Who? By = null
)
{
    public static ReadingAnswer Of(ReadingView r, Func<Guid, Who> who) => Of(r) with { By = who(r.Reading.By) };

    public static ReadingAnswer Of(ReadingView r) =>
        new(
            r.Reading.Id,
            r.Reading.Characteristic,
            new(r.Digits),
            r.Reading.Unit,
            r.Reading.Nominal,
            r.Reading.Lower,
            r.Reading.Upper,
            r.Met,
            r.Reading.Source.ToString().ToLowerInvariant(),
            r.Reading.ExpandedUncertainty,
            r.Reading.ExpandedUncertainty is null ? null : Words.Of(r.Conformity),
            r.ProbabilityOfConformance
        );
}
