using Microsoft.EntityFrameworkCore;
using Traceability.Domain.Evidence;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Values;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Setup.Routes.Examples;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.Routes.Drafts;

/// <summary>What the editor offers: what the code knows, and what the workshop has.</summary>
public sealed class DraftChoices(WorkshopContext db, KindsQuery kinds, RouteShelf shelf, WorkshopCalendar calendar, Writes writes)
{
    /// <summary>Codes of units, as routes write them.</summary>
    public static IReadOnlyList<string> UnitCodes { get; } = [.. Units.All.Select(u => u.Code)];

    /// <summary>Kinds of file.</summary>
    public static IReadOnlyList<string> EvidenceCodes { get; } = [.. EvidenceKinds.All.Select(EvidenceKinds.Code)];

    /// <summary>Cautions by code.</summary>
    public static IReadOnlyDictionary<string, string> CautionTexts => Cautions.Texts;

    /// <summary>Kinds of lots in the workshop's list, and those that its routes ask for.</summary>
    public IReadOnlyList<string> LotKinds { get; private set; } = [];

    /// <summary>Kinds of parts that routes make.</summary>
    public IReadOnlyList<string> PartKindsKnown { get; private set; } = [];

    /// <summary>Kinds of instruments in the workshop's list, and those that its routes ask for.</summary>
    public IReadOnlyList<string> InstrumentKinds { get; private set; } = [];

    /// <summary>Qualifications in the workshop's list, and those that its routes ask for.</summary>
    public IReadOnlyList<string> Qualifications { get; private set; } = [];

    /// <summary>Reads what the workshop has, once for a page.</summary>
    public async Task LoadAsync(CancellationToken cancellation)
    {
        var stages = (await shelf.AllInForceAsync(db, calendar.DayOf(writes.Now), cancellation)).SelectMany(r => r.Stages).ToList();
        LotKinds = Sorted(
            (await ListedAsync(KindOf.Lot, cancellation)).Concat(stages.SelectMany(s => s.Slots).Select(s => s.LotKind).OfType<string>())
        );
        PartKindsKnown = Sorted((await ListedAsync(KindOf.Part, cancellation)).Concat(RouteExamples.KindsOfAModel.Select(k => k.Kind)));
        InstrumentKinds = Sorted((await ListedAsync(KindOf.Instrument, cancellation)).Concat(stages.SelectMany(s => s.InstrumentKinds)));
        Qualifications = Sorted(
            (await ListedAsync(KindOf.Qualification, cancellation)).Concat(stages.Select(s => s.Qualification).OfType<string>())
        );
    }

    private async Task<IEnumerable<string>> ListedAsync(KindOf of, CancellationToken cancellation) =>
        (await kinds.OfAsync(of, cancellation)).Where(k => k.Offered).Select(k => k.Code);

    private static IReadOnlyList<string> Sorted(IEnumerable<string> codes) => [.. codes.Distinct().Order(StringComparer.Ordinal)];
}
