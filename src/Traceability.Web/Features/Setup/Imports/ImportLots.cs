using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Web.Features.Setup.Lots;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Imports;

/// <summary>
/// Lots, each into quarantine. An importer enters stock that came earlier with the day on which it came as the day of the record.
/// </summary>
public sealed class ImportLots(ReceiveLot receive, WorkshopCalendar calendar, Writes writes)
    : ImportKind(
        "lots",
        [
            new("number", false, "FILM-0007"),
            new("kind", true, "film"),
            new("supplier", true, "Film works"),
            new("supplierLot", true, "L-4711"),
            new("quantity", true, "50"),
            new("unit", true, "m"),
            new("receivedOn", false, "2026-01-31"),
            new("expiresOn", false, "2028-01-31"),
            new("baseThicknessUm", false, "6"),
            new("metalThicknessNm", false, "50"),
            new("sheetResistanceOhm", false, "1.5"),
        ],
        Role.Lead,
        Role.Importer
    )
{
    internal override async Task<Refusal?> AddAsync(ImportLine line, Actor actor, CancellationToken cancellation)
    {
        var (received, expires) = (line.DayOf("receivedOn"), line.DayOf("expiresOn"));
        var earlier = received is { } day && day != calendar.DayOf(writes.Now) ? calendar.NoonOf(day) : (DateTimeOffset?)null;
        var (thickness, metal) = (line.NumberOf("baseThicknessUm"), line.NumberOf("metalThicknessNm"));
        if (line.Text("kind") == Lot.FilmKind && (thickness is null || metal is null))
        {
            return Refusal.Invalid(thickness is null ? "baseThicknessUm" : "metalThicknessNm", ImportSentences.FilmNeedsItsThickness);
        }

        var film = thickness is { } um && metal is { } nm ? new FilmInput(um, nm, line.NumberOf("sheetResistanceOhm")) : null;
        var input = new ReceiveLot.Input(
            line.Text("kind"),
            line.Text("supplier"),
            line.Text("supplierLot"),
            line.NumberOf("quantity") ?? 0,
            line.Text("unit"),
            line.May("number"),
            earlier,
            expires is { } last ? calendar.NoonOf(last) : null,
            film,
            OccurredAt: actor.Is(Role.Importer) ? earlier : null
        );
        return (await receive.RunAsync(input, actor, cancellation)).Refusal;
    }

    internal override string ColumnOf(string field) =>
        field switch
        {
            "film" => "baseThicknessUm",
            "receivedAt" or "occurredAt" => "receivedOn",
            _ => base.ColumnOf(field),
        };
}
