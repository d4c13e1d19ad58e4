using Traceability.Domain.Gates;

namespace Traceability.Web.Features.Station.Mates;

/// <summary>A part with its values, and the units that its route gives them.</summary>
internal sealed record MateCandidate(PartInput Part, IReadOnlyDictionary<string, string> Units);
