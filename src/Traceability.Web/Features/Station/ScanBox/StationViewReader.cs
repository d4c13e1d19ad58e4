using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Scanning;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Model;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Life;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Station.Mates;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.ScanBox;

/// <summary>Reads what the station page shows beside the dossier: names of people, parts and lots.</summary>
public sealed class StationViewReader(
    WorkshopContext db,
    PartAtBenchReader parts,
    StationSignIn signIn,
    GateContexts contexts,
    InstrumentQuery instruments,
    EvidenceQuery evidence,
    EvidenceCharts charts,
    FindMates mates,
    NameQuery who,
    Writes writes,
    IStringLocalizer<StationTexts> texts
)
{
    public async Task<StationView> ReadAsync(ScreenState screen, CancellationToken cancellation)
    {
        var part = await parts.ReadAsync(screen.Session, signIn.Actor, cancellation);
        var (result, bar) = part is null ? default : await ResultAsync(part, cancellation);
        part = part is not null && bar is not null ? part with { Needs = part.Needs with { Bar = bar } } : part;
        var (kept, known) = (screen.Session, signIn.Reconcile(screen.Session, part?.Needs));
        // A sign-in or its end has its own prompt; else the last prompt holds while the situation is the one it was given in.
        var situation = ScreenState.Situation(known, part?.Needs);
        var stillHolds = known.Last != kept.Last || (screen.SituationAtPrompt ?? situation) == situation;
        var prompt = known.Last is { } last && stillHolds ? last : StationDesk.Now(known, part?.Needs);
        screen = screen with { Session = StationDesk.InStep(known, part?.Needs) };
        var people = part is null
            ? []
            : part
                .Dossier.Attempts.SelectMany(a => new[] { a.Attempt.By, a.Ending?.By ?? a.Attempt.By })
                .Append(part.Dossier.Part.By)
                .Distinct()
                .ToList();
        var fittings = part?.Dossier.PresentFittings.Values.ToList() ?? [];
        var (children, lots) = (
            fittings.Select(f => f.ChildId).OfType<Guid>().ToList(),
            fittings.Select(f => f.LotId).OfType<Guid>().ToList()
        );
        var names = people.Count == 0 ? [] : (await who.PeopleAsync(people, cancellation)).ToDictionary(p => p.Key, p => p.Value.Name);
        var items =
            children.Count == 0
                ? []
                : await db.Set<Part>().Where(p => children.Contains(p.Id)).ToDictionaryAsync(p => p.Id, p => p.Serial, cancellation);
        foreach (
            var lot in lots.Count == 0
                ? []
                : await db.Set<Lot>().Where(l => lots.Contains(l.Id)).Select(l => new { l.Id, l.Number }).ToListAsync(cancellation)
        )
        {
            items[lot.Id] = lot.Number;
        }

        var view = new StationView(
            screen,
            signIn.Actor,
            part,
            names,
            items,
            await LoadAsync(part?.Open, cancellation),
            result,
            signIn.Actor is not null && screen.Session.Station is null
                ? await db.Offered<Domain.Records.Station>().AsNoTracking().OrderBy(s => s.Code).ToListAsync(cancellation)
                : [],
            signIn.Actor is null && !await db.Set<Person>().AnyAsync(cancellation)
        )
        {
            Prompt = prompt,
        };
        return view with { Mates = await MatesAsync(view, cancellation), InstrumentsToScan = await InstrumentsAsync(view, cancellation) };
    }

    /// <summary>Which part to take is asked only when a slot that must match is the next to be filled.</summary>
    private async Task<MatesAnswer?> MatesAsync(StationView view, CancellationToken cancellation) =>
        view is { Part: { Open: not null, Stage.Match: { } match } part, NextPosition: { } next } && match.Positions.Contains(next)
            ? (await mates.RunAsync(part.Dossier.Part.Serial, next, null, cancellation)).Mates
            : null;

    /// <summary>Nobody knows by heart what a kind of instrument is called here: the codes are read out until one is scanned.</summary>
    private async Task<IReadOnlyDictionary<string, IReadOnlyList<string>>> InstrumentsAsync(
        StationView view,
        CancellationToken cancellation
    )
    {
        List<string> missing =
            view is { Part: { Open: null, Stage: { } stage } } && view.Actor is not null
                ? [.. stage.InstrumentKinds.Where(kind => !view.Session.Instruments.Any(i => i.Kind == kind))]
                : [];
        if (missing.Count == 0)
        {
            return view.InstrumentsToScan;
        }

        var codes = await db.Offered<Instrument>().Where(i => missing.Contains(i.Kind)).Select(i => i.Code).ToListAsync(cancellation);
        var context = contexts.At(writes.Now, null);
        var usable = (await instruments.FindAsync(codes, cancellation))
            .Where(i => i.StateOn(context.Day, context.Calendar) == InstrumentState.Usable)
            .ToLookup(i => i.Instrument.Kind, i => i.Instrument.Code);
        return missing.ToDictionary(kind => kind, kind => (IReadOnlyList<string>)[.. usable[kind]]);
    }

    private async Task<(StationResult? Result, ClosingBar? Bar)> ResultAsync(PartAtBench part, CancellationToken cancellation)
    {
        if (part.Open is { } open)
        {
            return await PreviewClosingAsync(part, open, cancellation);
        }

        return part.Dossier.Attempts.LastOrDefault(a => a.Closed) is not { Ending: { } ending } last
            ? (null, null)
            : (
                new(
                    part.Dossier.Route.Find(last.Stage),
                    last.Stage,
                    last.Verdict!.Value,
                    last.Readings,
                    ending.Findings,
                    ending.By,
                    ending.OccurredAt,
                    await charts.OfAsync(part.Dossier, last, cancellation)
                ),
                null
            );
    }

    /// <summary>
    /// Decides the closing as if it were asked for, and writes nothing: the builder sees what it comes to, or why it would be refused,
    /// while there is still time to look again. While something is missing, or a cure is not over, it would come to nothing yet.
    /// </summary>
    private async Task<(StationResult?, ClosingBar?)> PreviewClosingAsync(
        PartAtBench part,
        AttemptView open,
        CancellationToken cancellation
    )
    {
        var isComplete = part.Needs.Bar is null && part.Needs.Evidence.Count == 0 && !part.Needs.Characteristics.Any(c => c.IsRequired);
        if (signIn.Actor is not { } actor || !isComplete)
        {
            return (null, null);
        }

        var context = await contexts.EndingAsync(part.Dossier, open, writes.Now, actor, cancellation);
        var files = await evidence.FilesOfAsync(part.Dossier, open.Id, cancellation);
        var decision = Attempts.Close(part.Dossier, open.Id, files, null, context, writes.Stamp(actor.PersonId, null));
        return decision switch
        {
            { Refusal: { } refusal } => (null, new(GateSign.Blocked, WhyNotClosed(refusal, part))),
            { Value: { } closing } when part.Stage!.Characteristics.Any(c => !c.Entered) => (
                new(
                    part.Stage,
                    part.Stage.Code,
                    closing.Verdict,
                    closing.Readings,
                    closing.Findings,
                    null,
                    null,
                    await charts.OfAsync(part.Dossier, open, cancellation)
                ),
                null
            ),
            _ => (null, null),
        };
    }

    private string WhyNotClosed(Refusal refusal, PartAtBench part) =>
        part.Needs.Taken.Count > 0 ? texts["Station.CorrectFirst", GateSentence.Of(refusal.Message)] : GateSentence.Of(refusal.Message);

    private async Task<IReadOnlyList<string>> LoadAsync(AttemptView? open, CancellationToken cancellation) =>
        open?.Attempt.LoadId is { } load
            ? await db.Set<Attempt>()
                .Where(a => a.LoadId == load && !db.Set<AttemptEnding>().Any(e => e.AttemptId == a.Id))
                .Join(db.Set<Part>(), a => a.PartId, p => p.Id, (a, p) => p.Serial)
                .OrderBy(s => s)
                .ToListAsync(cancellation)
            : [];
}
