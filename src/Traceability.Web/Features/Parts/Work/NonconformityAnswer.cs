using Traceability.Domain.Records;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>A nonconformity that a verdict raised.</summary>
/// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c0a">Its id.</param>
/// <param name="Code" example="stage-failed">Its code.</param>
/// <param name="Description" example="insulationGOhm 82 GOhm is below 100 GOhm">What was found.</param>
public sealed record NonconformityAnswer(Guid Id, string Code, string Description)
{
    public static NonconformityAnswer? Of(Nonconformity? n) => n is null ? null : new(n.Id, n.Code, n.Description);
}
