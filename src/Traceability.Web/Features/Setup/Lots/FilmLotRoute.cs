using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Lots;

/// <summary>
/// A film lot travels a short route under its lot number: receipt, incoming inspection, release. Receipt and release are done by
/// receiving and releasing the lot; the inspection is recorded by hand, or judged on the supplier's certificate when the lot is released.
/// </summary>
public sealed class FilmLotRoute(WorkshopContext db, Writes writes, RouteShelf routes, WorkshopCalendar calendar)
{
    /// <summary>Film lots serve every model; their route stands under this name.</summary>
    public const string AnyModel = Display.AnyModel;

    /// <summary>Where receipt and release are recorded, which nobody scans.</summary>
    public const string Office = "GOODS-IN";

    /// <summary>Starts the lot on its route; false when the workshop has no film-lot route.</summary>
    public async Task<bool> StartAsync(Lot lot, Stamp stamp, CancellationToken cancellation)
    {
        if (
            await routes.InForceAsync(db, AnyModel, PartKinds.FilmLot, calendar.DayOf(writes.Now), cancellation) is not var (routeId, route)
        )
        {
            return false;
        }

        var part = new Part(lot.Id, lot.Number, PartKinds.FilmLot, AnyModel, routeId, stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        var open = writes.Book.Start(new Dossier(part, route, [], PartPlacement.None));
        var receipt = Do(open.Dossier.With([lot, part]), route.Stages[0], [], stamp);
        writes.Book.Append(open, "receive-lot", [lot, part, .. receipt.Facts]);
        return true;
    }

    /// <summary>
    /// What still keeps a film lot from being released; records inspection (on the supplier's certificate, unless done by hand) and
    /// release.
    /// </summary>
    public async Task<Refusal?> ReleaseAsync(Lot lot, LotDecision decision, Stamp stamp, CancellationToken cancellation)
    {
        if (await writes.Book.OpenAsync(lot.Id, cancellation) is not { } open)
        {
            await writes.Book.AppendAsync(lot.Id, "release-lot", [decision], cancellation);
            return null;
        }

        var dossier = open.Dossier;
        var facts = new List<Fact>();
        foreach (var stage in dossier.Route.Stages.Where(s => !dossier.IsPassed(s.Code)).ToList())
        {
            var done = Do(dossier, stage, CertificateValues(lot, stage), stamp);
            if (done.Refusal is { } refusal)
            {
                return refusal;
            }

            if (done.Value!.Verdict != Verdict.Pass)
            {
                return Refusal.Conflict(
                    SetupSentences.LotFailsOnItsCertificate(lot.Number, stage.Title, string.Join("; ", done.Value.Findings))
                );
            }

            facts.AddRange(done.Facts);
            dossier = dossier.With(done.Facts);
        }

        writes.Book.Append(open, "release-lot", [.. facts, decision]);
        return null;
    }

    private Decision<Closing> Do(Dossier dossier, Stage stage, IReadOnlyList<EnteredValue> values, Stamp stamp) =>
        Attempts.Record(
            dossier,
            stage.Code,
            Office,
            values,
            [],
            values.Count > 0 ? SetupSentences.JudgedOnTheSuppliersCertificate : null,
            null,
            new GateContext(stamp.OccurredAt, calendar),
            stamp
        );

    private static List<EnteredValue> CertificateValues(Lot lot, Stage stage)
    {
        (string Name, decimal? Value)[] said =
        [
            ("baseThicknessUm", lot.FilmBaseThicknessUm),
            ("metalThicknessNm", lot.FilmMetalThicknessNm),
            ("sheetResistanceOhm", lot.FilmSheetResistanceOhm),
        ];
        var values = new List<EnteredValue>();
        foreach (var (name, value) in said)
        {
            if (
                value is { } v
                && stage.Characteristic(name) is { Entered: true }
                && EnteredDecimal.TryParse(v.ToString(System.Globalization.CultureInfo.InvariantCulture), out var number, out _)
            )
            {
                values.Add(new(name, number));
            }
        }

        return values;
    }
}
