using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Scanning;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;

namespace Traceability.Web.Features.Station.ScanBox;

/// <summary>
/// Looks up what a scanned code stands for: the kind of a part, lot or instrument, the part in a carrier, whatever has a bare number.
/// </summary>
public sealed class CodeLookup(WorkshopContext db)
{
    /// <summary>The scan with its kind filled in, or null when nothing of that name is known.</summary>
    public Task<Scan?> FindAsync(Scan what, StationSession session, CancellationToken cancellation) =>
        what switch
        {
            Scan.Part part => PartAsync(part.Serial, cancellation),
            Scan.Carrier carrier => InCarrierAsync(carrier.Code, cancellation),
            Scan.Lot lot => LotAsync(lot.Code, cancellation),
            Scan.Instrument instrument => InstrumentAsync(instrument.Code, cancellation),
            Scan.Bare bare when session.Badge is null => PersonOrStationAsync(bare.Text, cancellation),
            Scan.Bare bare => AnythingAsync(bare.Text, session.AttemptId is not null, cancellation),
            _ => Task.FromResult<Scan?>(null),
        };

    /// <summary>A film lot travels its own route as a part: while no part is selected, its lot label selects it.</summary>
    public async Task<Scan> LotAsPartAsync(Scan scan, StationSession session, CancellationToken cancellation) =>
        scan is Scan.Lot lot && session is { Badge: not null, Part: null } && await PartAsync(lot.Code, cancellation) is { } part
            ? part
            : scan;

    private async Task<Scan?> PartAsync(string serial, CancellationToken cancellation) =>
        await db.Set<Part>().Where(p => p.Serial == serial).Select(p => p.Kind).FirstOrDefaultAsync(cancellation) is { } kind
            ? new Scan.Part(serial, kind)
            : null;

    private async Task<Scan?> InCarrierAsync(string code, CancellationToken cancellation) =>
        await db.Set<PartStanding>()
            .Where(s => s.CarrierCode == code)
            .Join(db.Set<Part>(), s => s.PartId, p => p.Id, (s, p) => p)
            .FirstOrDefaultAsync(cancellation)
            is { } part
            ? new Scan.Part(part.Serial, part.Kind)
            : null;

    private async Task<Scan?> LotAsync(string number, CancellationToken cancellation) =>
        await db.Kept<Lot>().Where(l => l.Number == number).Select(l => l.Kind).FirstOrDefaultAsync(cancellation) is { } kind
            ? new Scan.Lot(number, kind)
            : null;

    private async Task<Scan?> InstrumentAsync(string code, CancellationToken cancellation) =>
        await db.Kept<Instrument>().Where(i => i.Code == code).Select(i => i.Kind).FirstOrDefaultAsync(cancellation) is { } kind
            ? new Scan.Instrument(code, kind)
            : null;

    private async Task<Scan?> PersonOrStationAsync(string code, CancellationToken cancellation) =>
        await db.Kept<Person>().AnyAsync(p => p.Badge == code, cancellation) ? new Scan.Badge(code)
        : await db.Kept<Domain.Records.Station>().AnyAsync(s => s.Code == code, cancellation) ? new Scan.Station(code)
        : null;

    /// <summary>While a stage is open, a number that is both a lot and its own record means the lot that goes in.</summary>
    private async Task<Scan?> AnythingAsync(string code, bool isUnderWay, CancellationToken cancellation) =>
        (isUnderWay ? await LotAsync(code, cancellation) : null)
        ?? await PartAsync(code, cancellation)
        ?? await InCarrierAsync(code, cancellation)
        ?? await LotAsync(code, cancellation)
        ?? await InstrumentAsync(code, cancellation)
        ?? await PersonOrStationAsync(code, cancellation);
}
