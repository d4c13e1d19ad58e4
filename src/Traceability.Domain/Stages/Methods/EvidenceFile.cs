namespace Traceability.Domain.Stages.Methods;

/// <summary>A stored file with its bytes.</summary>
public sealed record EvidenceFile(Guid Id, string Name, string Kind, ReadOnlyMemory<byte> Bytes, decimal? FullScaleV);
