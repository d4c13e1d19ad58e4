namespace Traceability.Web.Features.Setup.Routes;

/// <summary>A route in force.</summary>
/// <param name="Model" example="TARN-2">The model of its parts.</param>
/// <param name="Kind" example="capsule">The kind of its parts.</param>
/// <param name="Revision" example="3">Its revision, from 1.</param>
/// <param name="Title" example="Capsule of the TARN-2">What it is called.</param>
/// <param name="Hash" example="9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08">
/// SHA-256 of its file, in hexadecimal.
/// </param>
/// <param name="Author" example="LEAD1">Badge of who wrote it.</param>
/// <param name="ApprovedBy" example="QUAL1">Badge of whom the file names as approver; empty when it names nobody.</param>
/// <param name="EffectiveFrom" example="2026-02-01">The first day on which new parts take it.</param>
/// <param name="Stages">Its stages in order.</param>
public sealed record RouteAnswer(
    string Model,
    string Kind,
    int Revision,
    string Title,
    string Hash,
    string Author,
    string ApprovedBy,
    DateOnly EffectiveFrom,
    IReadOnlyList<StageAnswer> Stages
)
{
    public static RouteAnswer Of(Domain.Routes.Route r) =>
        new(r.Model, r.Kind, r.Revision, r.Title, r.Hash, r.Author, r.ApprovedBy, r.EffectiveFrom, [.. r.Stages.Select(StageAnswer.Of)]);
}
