namespace Traceability.Domain.Records;

/// <summary>
/// One thing that is followed by its serial: a diaphragm, a capsule, a board set, a unit; or the film lot itself,
/// which travels its own short route under its lot number. The part keeps the route revision it started under.
/// </summary>
public sealed record Part(
    Guid Id,
    string Serial,
    string Kind,
    string Model,
    Guid RouteId,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>The kinds of part that the gates know by name.</summary>
public static class PartKinds
{
    /// <summary>A film lot followed through receipt, incoming inspection and release.</summary>
    public const string FilmLot = "film-lot";

    /// <summary>A metallised film on its ring.</summary>
    public const string Diaphragm = "diaphragm";

    /// <summary>Diaphragms, spacers and electrodes stacked and fastened.</summary>
    public const string Capsule = "capsule";

    /// <summary>The bought-in boards of one unit.</summary>
    public const string BoardSet = "board-set";

    /// <summary>The finished microphone, the kind that is certified and shipped.</summary>
    public const string Unit = "unit";
}

/// <summary>A part was laid into a jig, tray or tin whose coded tag stands for it from now on.</summary>
public sealed record CarrierPlacement(
    Guid Id,
    Guid PartId,
    string CarrierCode,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>A part left its carrier, which is free for another.</summary>
public sealed record CarrierRelease(Guid Id, Guid PartId, string CarrierCode, Guid By, DateTimeOffset OccurredAt, DateTimeOffset RecordedAt)
    : Fact(Id, By, OccurredAt, RecordedAt);

/// <summary>A unit left the workshop.</summary>
public sealed record Shipment(
    Guid Id,
    Guid PartId,
    string? CustomerReference,
    Guid By,
    DateTimeOffset OccurredAt,
    DateTimeOffset RecordedAt
) : Fact(Id, By, OccurredAt, RecordedAt);
