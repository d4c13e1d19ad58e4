using Traceability.Domain.Scanning;

namespace Traceability.Web.Features.Station.ScanBox;

/// <summary>What a scan or a file led to: the session from now on, and what the part on the bench needs now.</summary>
public sealed record StationAnswer(StationSession Session, StageNeeds? Needs);
