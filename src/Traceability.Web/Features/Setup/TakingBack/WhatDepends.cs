using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Records;
using Traceability.Persistence.Model;

namespace Traceability.Web.Features.Setup.TakingBack;

/// <summary>
/// Says what depends on something of the set-up, in words: whatever does keeps it from being taken back as entered by mistake. What was
/// recorded about the thing alone (a calibration, a release) goes with it.
/// </summary>
public sealed class WhatDepends(WorkshopContext db)
{
    private const int MostNamed = 5;

    /// <summary>What depends on it; nothing when it can be taken back.</summary>
    public async Task<IReadOnlyList<string>> RunAsync(SetupThing thing, CancellationToken cancellation) =>
        thing.Sort switch
        {
            SetupSort.Station => await OfStationAsync(thing.Code, cancellation),
            SetupSort.Instrument => await OfInstrumentAsync(thing.SubjectId, cancellation),
            SetupSort.Lot => await OfLotAsync(thing.SubjectId, cancellation),
            SetupSort.Carrier => await SayAsync(
                db.Set<CarrierPlacement>().Where(p => p.CarrierCode == thing.Code).Join(db.Set<Part>(), p => p.PartId, p => p.Id, Serial),
                TakingBackSentences.PartsLayInIt,
                cancellation
            ),
            SetupSort.Model => await SayAsync(
                db.Set<Part>().Where(p => p.Model == thing.Code).Select(p => p.Serial),
                TakingBackSentences.PartsAreOfIt,
                cancellation
            ),
            _ => [],
        };

    private static System.Linq.Expressions.Expression<Func<CarrierPlacement, Part, string>> Serial => (_, part) => part.Serial;

    private async Task<IReadOnlyList<string>> OfStationAsync(string code, CancellationToken cancellation) =>
        await SayAsync(
            db.Set<Attempt>().Where(a => a.Station == code).Join(db.Set<Part>(), a => a.PartId, p => p.Id, (_, p) => p.Serial),
            TakingBackSentences.AttemptsWereMadeThere,
            cancellation
        );

    private async Task<IReadOnlyList<string>> OfInstrumentAsync(Guid id, CancellationToken cancellation) =>
        [
            .. await SayAsync(
                db.Set<InstrumentUse>().Where(u => u.InstrumentId == id).Join(db.Set<Part>(), u => u.PartId, p => p.Id, (_, p) => p.Serial),
                TakingBackSentences.PartsWereMeasuredWithIt,
                cancellation
            ),
            .. await SayAsync(
                db.Set<MeasurementStudyReading>()
                    .Where(r => r.InstrumentId == id)
                    .Join(db.Set<MeasurementStudy>(), r => r.StudyId, s => s.Id, (_, s) => s.Number),
                TakingBackSentences.StudiesMeasuredWithIt,
                cancellation
            ),
            .. await HoldsAsync(db.Set<Hold>().Where(h => h.InstrumentId == id), cancellation),
            .. await SayAsync(
                db.Set<InstrumentToken>()
                    .Where(t => t.InstrumentId == id && !db.Set<InstrumentTokenRevocation>().Any(r => r.TokenId == t.Id))
                    .Select(t => t.Title),
                TakingBackSentences.TokensOpenIt,
                cancellation
            ),
        ];

    private async Task<IReadOnlyList<string>> OfLotAsync(Guid id, CancellationToken cancellation) =>
        [
            .. await SayAsync(
                db.Set<Fitting>().Where(f => f.LotId == id).Join(db.Set<Part>(), f => f.PartId, p => p.Id, (_, p) => p.Serial),
                TakingBackSentences.PartsContainIt,
                cancellation
            ),
            .. await HoldsAsync(db.Set<Hold>().Where(h => h.LotId == id), cancellation),
            .. await SayAsync(
                db.Set<ConcessionPermit>().Where(p => p.LotId == id).Select(p => p.Number),
                TakingBackSentences.ConcessionsAreForIt,
                cancellation
            ),
            .. await SayAsync(
                db.Set<Nonconformity>().Where(n => n.PartId == id).Select(n => n.Code),
                TakingBackSentences.NonconformitiesAreOnIt,
                cancellation
            ),
        ];

    private Task<IReadOnlyList<string>> HoldsAsync(IQueryable<Hold> holds, CancellationToken cancellation) =>
        SayAsync(
            holds.Where(h => !db.Set<HoldRelease>().Any(r => r.HoldId == h.Id)).Select(h => h.Reason),
            TakingBackSentences.HoldsAreOnIt,
            cancellation
        );

    private static async Task<IReadOnlyList<string>> SayAsync(
        IQueryable<string> named,
        Func<int, string, string> words,
        CancellationToken cancellation
    )
    {
        var all = named.Distinct();
        var first = await all.OrderBy(n => n).Take(MostNamed).ToListAsync(cancellation);
        return first.Count == 0
            ? []
            :
            [
                words(
                    first.Count < MostNamed ? first.Count : await all.CountAsync(cancellation),
                    string.Join(", ", first) + (first.Count < MostNamed ? "" : " ...")
                ),
            ];
    }
}
