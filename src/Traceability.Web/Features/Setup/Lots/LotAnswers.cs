using Traceability.Domain.Records;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Setup.Lots;

/// <summary>A lot in answers.</summary>
public sealed record LotAnswer(
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
    FilmInput? Film,
    string State,
    string? Reason,
    IReadOnlyList<string> Holds
)
{
    /// <summary>The boards tested so far against the sampling plan; only when one lot is asked for, and only for a lot of boards.</summary>
    public TallySample.Output? Sample { get; init; }

    public static LotAnswer Of(LotStanding s) =>
        new(
            s.Lot.Number,
            s.Lot.Kind,
            s.Lot.Supplier,
            s.Lot.SupplierLot,
            s.Lot.Quantity,
            s.Lot.Unit,
            s.Lot.ReceivedAt,
            s.Lot.ExpiresAt,
            s.Lot.MixedAt,
            s.Lot.PotLifeMinutes,
            s.Lot.FilmBaseThicknessUm is { } um && s.Lot.FilmMetalThicknessNm is { } nm ? new(um, nm, s.Lot.FilmSheetResistanceOhm) : null,
            s.State == LotState.Released ? "released" : "quarantined",
            s.Reason,
            s.Holds
        );
}

/// <summary>What the supplier's certificate says of a film.</summary>
public sealed record FilmInput(decimal BaseThicknessUm, decimal MetalThicknessNm, decimal? SheetResistanceOhm = null);
