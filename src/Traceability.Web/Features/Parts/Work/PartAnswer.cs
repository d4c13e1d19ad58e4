using Traceability.Domain.Gates;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>A part as it stands.</summary>
/// <param name="Serial" example="US26-00034">The part's serial; of a film lot its number.</param>
/// <param name="Kind" example="unit">The kind of part.</param>
/// <param name="Model" example="TARN-1">The model.</param>
/// <param name="Route" example="TARN-1/unit/1">The route that it travels: model, kind and revision.</param>
/// <param name="Stage" example="body">The code of its next stage, or of the one that is open; null when every stage is done.</param>
/// <param name="State" example="in-work">How far the part itself has come.</param>
/// <param name="Carrier" example="JIG-07">The carrier that it lies in.</param>
/// <param name="FittedIn" example="US26-00034">The serial of the part that it is fitted in.</param>
/// <param name="OpenAttempt" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The attempt that is open on it.</param>
/// <param name="Standing">What it is now, with everything in and around it.</param>
public sealed record PartAnswer(
    string Serial,
    string Kind,
    string Model,
    string Route,
    string? Stage,
    [property: OneOf(typeof(PartState))] string State,
    string? Carrier,
    string? FittedIn,
    Guid? OpenAttempt,
    StandingAnswer Standing
)
{
    public static PartAnswer Of(Dossier d, GateContext context) =>
        new(
            d.Part.Serial,
            d.Part.Kind,
            d.Part.Model,
            $"{d.Route.Model}/{d.Route.Kind}/{d.Route.Revision}",
            d.NextStage()?.Code,
            Words.Of(d.State()),
            d.Around.CarrierCode,
            d.Around.FittedInSerial,
            d.OpenAttempt?.Id,
            StandingAnswer.Of(Domain.Gates.Standings.Standing.Of(d, context))
        );
}
