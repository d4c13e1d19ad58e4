using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Model;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Service.Search;

/// <summary>Something found: what it is, its code, and the serial of the part that it leads to, where there is one.</summary>
public sealed record Found(string What, string Code, string Words, string? Serial);

/// <summary>The one look-up box: fragments of serials, lot numbers of ours and of suppliers, carriers, customer references.</summary>
public sealed class LookUp(WorkshopContext db)
{
    private const int Most = 100;
    private const int Longest = 100;

    public static async Task<IResult> HandleAsync(LookUp use, HttpContext http, CancellationToken cancellation, string? q = null) =>
        q?.Trim() is { Length: > 0 and <= Longest } text
            ? Csv.Answer(http, new Page<Found>(await use.RunAsync(text, cancellation), null))
            : ProblemAnswers.From(Refusal.Invalid("q", $"say what to look for, 1 to {Longest} characters"));

    /// <summary>At most a hundred hits: parts first, those that begin with the text before those that only hold it.</summary>
    public async Task<IReadOnlyList<Found>> RunAsync(string text, CancellationToken cancellation)
    {
        var anywhere = $"%{Escaped(text)}%";
        var hits = new List<Found>();
        hits.AddRange(await (from p in db.Set<Part>()
                             join s in db.Set<PartStanding>() on p.Id equals s.PartId
                             where EF.Functions.ILike(p.Serial, anywhere, "\\") || (s.CarrierCode != null && EF.Functions.ILike(s.CarrierCode, anywhere, "\\"))
                             orderby !EF.Functions.ILike(p.Serial, Escaped(text) + "%", "\\"), p.Serial
                             select new Found(
                                 EF.Functions.ILike(p.Serial, anywhere, "\\") ? "part" : "carrier", EF.Functions.ILike(p.Serial, anywhere, "\\") ? p.Serial : s.CarrierCode!,
                                 p.Kind + ", " + p.Model + ", " + s.State, p.Serial)).Take(Most).ToListAsync(cancellation));
        hits.AddRange(await db.Set<Lot>().Where(l => EF.Functions.ILike(l.Number, anywhere, "\\") || EF.Functions.ILike(l.SupplierLot, anywhere, "\\"))
            .OrderBy(l => l.Number).Take(Most).Select(l => new Found("lot", l.Number, l.Kind + " lot of " + l.Supplier + ", their lot " + l.SupplierLot, null)).ToListAsync(cancellation));
        hits.AddRange(await ReferencesAsync(anywhere, cancellation));
        return [.. hits.Take(Most)];
    }

    private async Task<List<Found>> ReferencesAsync(string anywhere, CancellationToken cancellation)
    {
        var shipped = from s in db.Set<Shipment>()
                      join p in db.Set<Part>() on s.PartId equals p.Id
                      where s.CustomerReference != null && EF.Functions.ILike(s.CustomerReference, anywhere, "\\")
                      select new { Code = s.CustomerReference!, p.Serial, p.Model, At = s.OccurredAt, Shipped = true };
        var returned = from r in db.Set<UnitReturn>()
                       join p in db.Set<Part>() on r.PartId equals p.Id
                       where r.CustomerReference != null && EF.Functions.ILike(r.CustomerReference, anywhere, "\\")
                       select new { Code = r.CustomerReference!, p.Serial, p.Model, At = r.OccurredAt, Shipped = false };
        var rows = await shipped.Concat(returned).OrderBy(x => x.Code).ThenBy(x => x.At).Take(Most).ToListAsync(cancellation);
        return rows.ConvertAll(x => new Found("reference", x.Code, $"{x.Model} {x.Serial}, {(x.Shipped ? "shipped" : "returned")} {x.At.UtcDateTime:d MMM yyyy}", x.Serial));
    }

    /// <summary>The characters that mean something to ILIKE, made to mean themselves.</summary>
    private static string Escaped(string text) => text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("%", "\\%", StringComparison.Ordinal).Replace("_", "\\_", StringComparison.Ordinal);
}
