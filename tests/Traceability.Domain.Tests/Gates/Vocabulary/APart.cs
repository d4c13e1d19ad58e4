using System.Security.Cryptography;
using System.Text;
using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Stages.Methods;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Domain.Work.Delivery;
using Traceability.Domain.Work.QualityDecisions;

namespace Traceability.Domain.Tests.Gates.Vocabulary;

/// <summary>
/// A part on its way through the workshop. Every step runs the real decision; what it leads to becomes part of the dossier, as the
/// record book would do it. <c>Try...</c> gives the decision back; the others insist that it was accepted.
/// </summary>
internal sealed class APart
{
    private readonly Dictionary<string, Input> fitted = [];
    private readonly List<EvidenceFile> files = [];

    public APart(Route route, Bench? bench = null)
    {
        Bench = bench ?? new Bench();
        var part = new Part(Bench.NewId(), "C-1", route.Kind, route.Model, Guid.Empty, Guid.Empty, Bench.Now, Bench.Now);
        Dossier = new(part, route, [part], PartPlacement.None);
    }

    public Bench Bench { get; }

    public Dossier Dossier { get; private set; }

    /// <summary>Who works on it now.</summary>
    public Actor Worker { get; set; } = Somebody.Builder;

    /// <summary>The instruments at hand.</summary>
    public IReadOnlyList<InstrumentStanding> Instruments { get; set; } = [];

    public PartPlacement Around
    {
        set => Dossier = Dossier.With([], value);
    }

    public IEnumerable<string> Passes => Dossier.Route.Stages.Select(s => s.Code).Where(s => Dossier.IsPassed(s));

    public Nonconformity OpenNonconformity => Dossier.OpenNonconformities().Last();

    public GateContext Context => new(Bench.Now, Bench.Calendar) { Actor = Worker, Instruments = Instruments };

    /// <summary>What is in the slots of the stage now open.</summary>
    public IReadOnlyDictionary<string, Input> InSlots =>
        Dossier
            .PresentFittings.Keys.Where(p => Dossier.OpenAttempt is { } open && StageOf(open.Stage).Slot(p) is not null)
            .ToDictionary(p => p, p => fitted[p]);

    public Stage StageOf(string stage) => Dossier.Route.Find(stage)!;

    public GateVerdict Gate(string stage) => Gatekeeper.Evaluate(Dossier, StageOf(stage), Context);

    public GateVerdict EndGate(string stage) => Gatekeeper.EvaluateEnd(Dossier, StageOf(stage), Context with { Inputs = InSlots });

    public GateCheck Rule(string stage, string rule) => Gate(stage).Checks.Single(c => c.Rule == rule);

    public GateCheck EndRule(string stage, string rule) => EndGate(stage).Checks.Single(c => c.Rule == rule);

    public Decision<Attempt> TryOpen(string stage, DateTimeOffset? occurredAt = null) =>
        Take(Attempts.Open(Dossier, stage, "ST-1", null, Context, Bench.Stamp(Worker, occurredAt)));

    public Decision<IReadOnlyList<Reading>> TryRead(params (string Characteristic, string Digits)[] values) =>
        Take(
            Readings.Take(
                Dossier,
                OpenId,
                [.. values.Select(v => new EnteredValue(v.Characteristic, Numbers.Typed(v.Digits)))],
                ReadingSource.Entered,
                Context,
                Bench.Stamp(Worker)
            )
        );

    public Decision<IReadOnlyList<Fitting>> TryFit(params Input[] inputs)
    {
        var decision = Take(
            Fittings.Fit(Dossier, OpenId, Context with { Inputs = inputs.ToDictionary(i => i.Position) }, Bench.Stamp(Worker))
        );
        foreach (var input in decision.Refusal is null ? inputs : [])
        {
            fitted[input.Position] = input switch
            {
                PartInput p => p with { AlreadyFittedHere = true },
                LotInput l => l with { AlreadyFittedHere = true },
                _ => input,
            };
        }

        return decision;
    }

    public Decision<SecondSignIn> TrySign(string stage, string because) =>
        Take(SecondSignIns.Sign(Dossier, stage, Worker.Alone(because), Bench.Stamp(Worker)));

    public Decision<EvidenceRecord> TryAttach(string name, string kind, string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        var decision = Take(
            EvidenceFiles.Attach(
                Dossier,
                OpenId,
                new(name, kind, "text/csv", Convert.ToHexStringLower(SHA256.HashData(bytes)), bytes, null),
                Context,
                Bench.Stamp(Worker)
            )
        );
        if (decision.Value is { } kept)
        {
            files.Add(new(kept.Id, kept.Name, kept.Kind, bytes, null));
        }

        return decision;
    }

    public Decision<Closing> TryClose(DateTimeOffset? occurredAt = null) =>
        Take(Attempts.Close(Dossier, OpenId, files, null, Context with { Inputs = InSlots }, Bench.Stamp(Worker, occurredAt)));

    public Decision<AttemptEnding> TryAbandon(string reason = "called away") =>
        Take(Attempts.Abandon(Dossier, OpenId, reason, Bench.Stamp(Worker)));

    public Decision<Removal> TryRemove(string position, string reason = "scratched") =>
        Take(Fittings.Remove(Dossier, position, reason, Context, Bench.Stamp(Worker)));

    public Decision<Corrected> TryCorrect(string characteristic, string digits, Actor? by = null, string reason = "misread") =>
        Take(
            Readings.Correct(
                Dossier,
                ReadingOf(characteristic).Reading.Id,
                Numbers.Typed(digits),
                reason,
                Context with
                {
                    Actor = by ?? Worker,
                },
                _ => new(files, Context),
                Bench.Stamp(by ?? Worker)
            )
        );

    public Decision<Nonconformity> TryRaise(string code = "scratched-film", string description = "a scratch across the film") =>
        Take(NonconformityReports.Raise(Dossier, code, description, Bench.Stamp(Worker)));

    public Decision<Disposition> TryDecide(
        DispositionKind kind,
        string? returnTo = null,
        Actor? by = null,
        Nonconformity? about = null,
        string reason = "looked at it"
    ) =>
        Take(
            Dispositions.Decide(
                Dossier,
                (about ?? OpenNonconformity).Id,
                kind,
                returnTo,
                null,
                reason,
                by ?? Somebody.QualityLead,
                Bench.Stamp(by ?? Somebody.QualityLead)
            )
        );

    public Decision<Shipment> TryShip() => Take(ReleaseUnit.Ship(Dossier, null, null, Bench.Stamp(Somebody.QualityLead)));

    /// <summary>The latest reading of that characteristic, whichever attempt took it.</summary>
    public ReadingView ReadingOf(string characteristic) =>
        Dossier.Attempts.Reverse().Select(a => a.Reading(characteristic)).First(r => r is not null)!;

    public void Add(params Fact[] facts) => Dossier = Dossier.With(facts);

    public Hold Hold(string reason = "looks odd")
    {
        var stamp = Bench.Stamp(Somebody.QualityLead);
        var hold = new Hold(stamp.NewId(), null, Dossier.Part.Id, null, reason, stamp.By, stamp.OccurredAt, stamp.RecordedAt);
        Add(hold);
        return hold;
    }

    public void Lift(Hold hold)
    {
        var stamp = Bench.Stamp(Somebody.QualityLead);
        Add(new HoldRelease(stamp.NewId(), hold.Id, "it is well", stamp.By, stamp.OccurredAt, stamp.RecordedAt));
    }

    private Guid OpenId => Dossier.OpenAttempt?.Id ?? (Dossier.Attempts is [.., var last] ? last.Id : Guid.Empty);

    private Decision<T> Take<T>(Decision<T> decision)
    {
        Dossier = Dossier.With(decision.Facts);
        return decision;
    }
}
