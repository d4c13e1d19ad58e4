using Traceability.Domain.Records;
using Traceability.Persistence.Queries;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Lots;

/// <summary>A lot as it stands.</summary>
/// <param name="Number" example="FILM-0007">Its number, as its label says it.</param>
/// <param name="Kind" example="film">What it is a lot of.</param>
/// <param name="Supplier" example="Film works">Who supplied it.</param>
/// <param name="SupplierLot" example="L-4711">The supplier's own number.</param>
/// <param name="Quantity" example="50">How much came, in Unit.</param>
/// <param name="Unit" example="m">The unit of the quantity.</param>
/// <param name="ReceivedAt" example="2026-01-31T14:20:00Z">When it came.</param>
/// <param name="ExpiresAt" example="2027-01-31T00:00:00Z">From when on it may not be used; null when it keeps.</param>
/// <param name="MixedAt" example="2026-01-31T14:20:00Z">When an adhesive was mixed.</param>
/// <param name="PotLifeMinutes" example="90">How long it may be used after mixing, in minutes.</param>
/// <param name="Film">What the supplier's certificate says of a film; null for other kinds.</param>
/// <param name="State" example="released">Whether it may be used.</param>
/// <param name="Reason" example="incoming check passed">Why it was decided so; null as long as nobody decided.</param>
/// <param name="Holds">Why it must not be used; empty when nothing holds it.</param>
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
    [property: OneOf(typeof(LotState))] string State,
    string? Reason,
    IReadOnlyList<string> Holds
)
{
    /// <summary>The boards tested so far against the sampling plan; only when one lot is asked for, and only for a lot of boards.</summary>
    public TallySample.Output? Sample { get; init; }

    /// <summary>Why it is retired, so that nothing new may use it; null while it is in use.</summary>
    public string? RetiredBecause { get; init; }

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
        )
        {
            RetiredBecause = s.RetiredBecause,
        };
}

/// <summary>What the supplier's certificate says of a film.</summary>
/// <param name="BaseThicknessUm" example="6">Thickness of the base, in µm.</param>
/// <param name="MetalThicknessNm" example="50">Thickness of the metal, in nm.</param>
/// <param name="SheetResistanceOhm" example="2.1">Resistance of a square of the metal, in Ω.</param>
public sealed record FilmInput(decimal BaseThicknessUm, decimal MetalThicknessNm, decimal? SheetResistanceOhm = null);
