using Traceability.Domain.Evidence;
using Traceability.Domain.Records;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>A kept file; its bytes are at <c>/attempts/{attempt}/evidence/{id}</c>.</summary>
/// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c0e">The file's id.</param>
/// <param name="Name" example="front">The name under which the stage asks for it.</param>
/// <param name="Kind" example="frequency-response">The kind of evidence.</param>
/// <param name="MediaType" example="text/csv">The content type.</param>
/// <param name="Sha256" example="9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08">The SHA-256 of its bytes.</param>
/// <param name="LengthBytes" example="18244">Its length in bytes.</param>
public sealed record EvidenceAnswer(
    Guid Id,
    string Name,
    [property: OneOf(typeof(EvidenceKind))] string Kind,
    string MediaType,
    string Sha256,
    long LengthBytes
)
{
    public static EvidenceAnswer Of(EvidenceRecord e) => new(e.Id, e.Name, e.Kind, e.MediaType, e.Sha256, e.LengthBytes);
}
