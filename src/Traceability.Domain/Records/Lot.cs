namespace Traceability.Domain.Records;

/// <summary>
/// A quantity of bought or mixed material that arrived together: a film lot, an adhesive lot, a bag of rings.
/// It is quarantined until somebody releases it. The film columns are what the supplier's certificate says of a metallised film:
/// micrometres, nanometres, ohms per square. For an adhesive mixed at the bench, <c>MixedAt</c> starts its pot life.
/// </summary>
public sealed record Lot(
    Guid Id,
    string Number,
    string Kind,
    string Supplier,
    string SupplierLot,
    decimal Quantity,
    string Unit,
    DateTimeOffset ReceivedAt,
    DateTimeOffset? ExpiresAt,
    DateTimeOffset? MixedAt,
    int? PotLifeMinutes,
    decimal? FilmBaseThicknessUm,
    decimal? FilmMetalThicknessNm,
    decimal? FilmSheetResistanceOhm,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt)
{
    /// <summary>The kind of lot that has a route of its own: metallised film.</summary>
    public const string FilmKind = "film";
}

/// <summary>Where a lot stands after its latest decision.</summary>
public enum LotState
{
    /// <summary>May not be used; the state in which every lot arrives.</summary>
    Quarantined,

    /// <summary>May be used.</summary>
    Released,
}

/// <summary>A lot was released or put (back) into quarantine, with the reason.</summary>
public sealed record LotDecision(
    Guid Id,
    Guid LotId,
    LotState State,
    string Reason,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);
