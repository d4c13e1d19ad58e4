using Microsoft.EntityFrameworkCore;
using Traceability.Documents.Labels;
using Traceability.Domain.Codes;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Parts.Labels;

/// <summary>Something that a label can be printed for.</summary>
public sealed record LabelLine(PrintedCode Code, string Title, string? Detail);

/// <summary>Finds what labels can be printed for.</summary>
public sealed class LabelQuery(WorkshopContext db, RouteShelf routes, Writes writes, WorkshopCalendar calendar)
{
    private const int Most = 200;

    /// <summary>What labels are printed for.</summary>
    public static readonly IReadOnlyList<string> Kinds = ["parts", "carriers", "lots", "stations", "instruments", "badges", "positions"];

    /// <summary>How large the labels of a kind are.</summary>
    public static LabelFormat FormatOf(string kind) =>
        kind switch
        {
            "parts" => LabelFormat.Part,
            "badges" => LabelFormat.Badge,
            "stations" => LabelFormat.Station,
            _ => LabelFormat.Lot,
        };

    /// <summary>The newest of a kind whose code or name holds <paramref name="find"/>, or those with these codes.</summary>
    public Task<IReadOnlyList<LabelLine>> FindAsync(string kind, string? find, string[]? codes, CancellationToken cancellation)
    {
        var text = (find ?? "").Trim().Replace("\\", "\\\\", StringComparison.Ordinal);
        var like = $"%{text.Replace("%", "\\%", StringComparison.Ordinal).Replace("_", "\\_", StringComparison.Ordinal)}%";
        return kind switch
        {
            "parts" => ReadAsync(
                CodeKind.Part,
                db.Set<Part>()
                    .Where(p => codes == null ? EF.Functions.ILike(p.Serial, like) : codes.Contains(p.Serial))
                    .OrderByDescending(p => p.Id)
                    .Select(p => new Row(p.Serial, p.Kind + " " + p.Serial, p.Model)),
                codes,
                cancellation
            ),
            "carriers" => ReadAsync(
                CodeKind.Carrier,
                db.Offered<Carrier>()
                    .Where(c => codes == null ? EF.Functions.ILike(c.Code, like) : codes.Contains(c.Code))
                    .OrderByDescending(c => c.Id)
                    .Select(c => new Row(c.Code, c.Code, c.Kind)),
                codes,
                cancellation
            ),
            "lots" => ReadAsync(
                CodeKind.Lot,
                db.Offered<Lot>()
                    .Where(l =>
                        codes == null
                            ? EF.Functions.ILike(l.Number, like) || EF.Functions.ILike(l.Kind, like) || EF.Functions.ILike(l.Supplier, like)
                            : codes.Contains(l.Number)
                    )
                    .OrderByDescending(l => l.Id)
                    .Select(l => new Row(l.Number, l.Kind + " " + l.Number, l.Supplier + " " + l.SupplierLot)),
                codes,
                cancellation
            ),
            "stations" => ReadAsync(
                CodeKind.Station,
                db.Offered<Domain.Records.Station>()
                    .Where(s =>
                        codes == null ? EF.Functions.ILike(s.Code, like) || EF.Functions.ILike(s.Title, like) : codes.Contains(s.Code)
                    )
                    .OrderByDescending(s => s.Id)
                    .Select(s => new Row(
                        s.Code,
                        db.Set<NameCorrection>()
                            .Where(c => c.SubjectId == s.Id)
                            .OrderByDescending(c => c.RecordedAt)
                            .Select(c => c.Name)
                            .FirstOrDefault()
                            ?? s.Title,
                        s.Code
                    )),
                codes,
                cancellation
            ),
            "instruments" => ReadAsync(
                CodeKind.Instrument,
                db.Offered<Instrument>()
                    .Where(i =>
                        codes == null ? EF.Functions.ILike(i.Code, like) || EF.Functions.ILike(i.Title, like) : codes.Contains(i.Code)
                    )
                    .OrderByDescending(i => i.Id)
                    .Select(i => new Row(
                        i.Code,
                        db.Set<NameCorrection>()
                            .Where(c => c.SubjectId == i.Id)
                            .OrderByDescending(c => c.RecordedAt)
                            .Select(c => c.Name)
                            .FirstOrDefault()
                            ?? i.Title,
                        i.Kind
                    )),
                codes,
                cancellation
            ),
            "badges" => ReadAsync(
                CodeKind.Badge,
                db.Offered<Person>()
                    .Where(p =>
                        codes == null ? EF.Functions.ILike(p.Badge, like) || EF.Functions.ILike(p.Name, like) : codes.Contains(p.Badge)
                    )
                    .OrderByDescending(p => p.Id)
                    .Select(p => new Row(
                        p.Badge,
                        db.Set<NameCorrection>()
                            .Where(c => c.SubjectId == p.Id)
                            .OrderByDescending(c => c.RecordedAt)
                            .Select(c => c.Name)
                            .FirstOrDefault()
                            ?? p.Name,
                        p.Badge
                    )),
                codes,
                cancellation
            ),
            _ => PositionsAsync(find ?? "", codes, cancellation),
        };
    }

    private static async Task<IReadOnlyList<LabelLine>> ReadAsync(
        CodeKind kind,
        IQueryable<Row> rows,
        string[]? codes,
        CancellationToken cancellation
    ) =>
        [
            .. (await rows.Take(codes?.Length ?? Most).ToListAsync(cancellation))
                .Where(r => CodeText.TryRead(r.Code, "", out _, out _))
                .Select(r => new LabelLine(PrintedCode.For(kind, r.Code), r.Title, r.Detail)),
        ];

    private async Task<IReadOnlyList<LabelLine>> PositionsAsync(string find, string[]? codes, CancellationToken cancellation)
    {
        var inForce = await routes.AllInForceAsync(db, calendar.DayOf(writes.Now), cancellation);
        return
        [
            .. from slot in inForce
                .SelectMany(r => r.Stages.SelectMany(s => s.Slots.Select(slot => (Route: r, Stage: s, Slot: slot))))
                .DistinctBy(x => x.Slot.Position)
            where CodeText.TryRead(slot.Slot.Position, "", out _, out _)
            where
                codes is null
                    ? $"{slot.Slot.Position} {slot.Slot.Label}".Contains(find.Trim(), StringComparison.OrdinalIgnoreCase)
                    : codes.Contains(slot.Slot.Position, StringComparer.OrdinalIgnoreCase)
            select new LabelLine(
                PrintedCode.For(CodeKind.Position, slot.Slot.Position),
                slot.Slot.Label,
                $"{slot.Route.Kind}: {slot.Stage.Title}"
            ),
        ];
    }

    private sealed record Row(string Code, string Title, string? Detail);
}
