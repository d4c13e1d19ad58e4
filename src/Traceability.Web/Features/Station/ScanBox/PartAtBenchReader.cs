using Microsoft.Extensions.Localization;
using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Gates.Standings;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Scanning;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Shared;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.ScanBox;

/// <summary>Reads a part as the station sees it. Only read: whether anything may be done is judged again by the use case.</summary>
public sealed class PartAtBenchReader(
    DossierReader dossiers,
    GateContexts contexts,
    Writes writes,
    Display display,
    IStringLocalizer<StationTexts> texts
)
{
    /// <summary>The part that a screen shows.</summary>
    public Task<PartAtBench?> ReadAsync(StationSession session, Actor? actor, CancellationToken cancellation) =>
        ReadAsync(session.Part, session.Repeats, actor, cancellation);

    /// <summary>
    /// The part with that serial, seen by a person; null when there is none. Its stage is the one open on it, else the one that
    /// <paramref name="repeats"/> names while that may be run again, else its next.
    /// </summary>
    public async Task<PartAtBench?> ReadAsync(string? serial, string? repeats, Actor? actor, CancellationToken cancellation)
    {
        if (
            serial is null
            || await dossiers.FindAsync(serial, cancellation) is not { } id
            || await dossiers.LoadAsync(id, cancellation) is not { } dossier
        )
        {
            return null;
        }

        var context = contexts.At(writes.Now, actor);
        var again = dossier.OpenAttempt is null
            ? dossier.Route.Stages.LastOrDefault(s =>
                s.Repeatable && dossier.IsPassed(s.Code) && NotPassedYet.Check(new(dossier, s, context)).Met
            )
            : null;
        var stage =
            dossier.OpenAttempt is { } open ? dossier.Route.Find(open.Stage)
            : again is not null && again.Code == repeats ? again
            : dossier.NextStage();
        var standing = Standing.Of(dossier, context);
        var part = stage is null
            ? Finished(dossier, standing)
            : await AtAsync(dossier, stage, context, StandingAnswer.Of(standing), cancellation);
        return part with { Needs = part.Needs with { Repeatable = again is null ? null : new(again.Code, again.Title) } };
    }

    /// <summary>
    /// Every stage is passed. It may be fitted or certified unless something stands in the way, which is then shown.
    /// </summary>
    private PartAtBench Finished(Dossier dossier, Standing standing)
    {
        var (title, words) = standing.Code switch
        {
            StandingCode.Stock => (texts["Station.FinishedTitle"], texts["Station.FinishedUnit"]),
            StandingCode.Finished => (texts["Station.FinishedTitle"], texts["Station.FinishedPart"]),
            var code => (texts["Station.NotFreeTitle"], texts["Station.Now." + Words.Of(code)]),
        };
        return new(dossier, null, null, new(dossier.Part.Serial, "", title, GateSign.Blocked, words), StandingAnswer.Of(standing));
    }

    private async Task<PartAtBench> AtAsync(
        Dossier dossier,
        Stage stage,
        GateContext context,
        StandingAnswer standing,
        CancellationToken cancellation
    )
    {
        var open = dossier.OpenAttempt;
        var ending =
            open is not null && context.Actor is { } actor
                ? await contexts.EndingAsync(dossier, open, context.At, actor, cancellation)
                : context;
        var gate = open is null ? Gatekeeper.Evaluate(dossier, stage, context) : Gatekeeper.EvaluateEnd(dossier, stage, ending);
        var (sign, words) = open is null ? StartWords(gate) : (GateSign.Open, EndWords(gate));
        var present = dossier.PresentFittings;
        return new(
            dossier,
            stage,
            gate,
            new(dossier.Part.Serial, stage.Code, stage.Title, sign, words)
            {
                AttemptId = open?.Id,
                LoadId = open?.Attempt.LoadId,
                Slots =
                [
                    .. stage
                        .Slots.Where(s => !present.ContainsKey(s.Position))
                        .Select(s => new EmptySlot(s.Position, s.Label, s.LotKind, s.PartKind, s.Required)),
                ],
                Characteristics = [.. stage.Characteristics.Where(c => c.Entered && open?.Reading(c.Name) is null).Select(Asked)],
                Taken =
                [
                    .. (open?.Readings ?? [])
                        .Where(r =>
                            r.Reading.Source != ReadingSource.Computed && stage.Characteristic(r.Reading.Characteristic) is not null
                        )
                        .Select(r => new TakenReading(
                            r.Reading.Id,
                            Asked(stage.Characteristic(r.Reading.Characteristic)!),
                            r.Digits,
                            r.Met
                        )),
                ],
                Evidence =
                [
                    .. stage
                        .Evidence.Where(e => e.Required && open?.Evidence.Any(x => x.Name == e.Name) != true)
                        .Select(e => $"{e.Name} ({e.Kind})"),
                ],
                Bar = open is null ? null : BarOf(gate),
                InstrumentKinds = stage.InstrumentKinds,
                MayRunAsLoad = stage.Loads,
            },
            standing
        );
    }

    private static MissingCharacteristic Asked(Characteristic c) =>
        new(c.Name, c.Label, c.Unit, c.Lower, c.Upper)
        {
            IsRequired = c.Required,
            ExpandedUncertainty = c.ExpandedUncertainty,
            Guarded = c.Guarded,
        };

    /// <summary>What keeps an attempt from being closed: time, when only time does.</summary>
    private ClosingBar? BarOf(GateVerdict gate) =>
        gate.Unmet.ToList() switch
        {
            [] => null,
            [{ Rule: MinimumTimeOpen.Rule, OpensAt: { } end }] => new(
                GateSign.Waiting,
                texts["Station.UntilIn", display.ClockText(end), display.Until(end)]
            ),
            var unmet => new(GateSign.Blocked, Because(unmet.First(c => c.Rule != MinimumTimeOpen.Rule))),
        };

    private static string Because(GateCheck check) => $"{GateSentence.Of(check.Because)} {GateSentence.Of(check.Remedy ?? "")}".TrimEnd();

    private (GateSign, string) StartWords(GateVerdict gate)
    {
        var why = string.Join(" ", gate.Unmet.Take(1).Select(Because));
        return gate.State switch
        {
            // A stage that was passed and may be run again is open too.
            _ when gate.Open => (
                GateSign.Open,
                gate.ClosesAt is { } until ? texts["Station.OpenUntil", display.ClockText(until)] : texts["Station.Open"]
            ),
            StageState.Waiting => (
                GateSign.Waiting,
                $"{texts["Station.OpensAt", display.ClockText(gate.OpensAt!.Value), display.Until(gate.OpensAt.Value)]} {why}"
            ),
            _ => (GateSign.Blocked, why),
        };
    }

    /// <summary>Missing inputs are shown in the list of slots; here stands what else keeps the attempt from being closed.</summary>
    private string EndWords(GateVerdict gate) =>
        gate.Unmet.FirstOrDefault(c => c.Rule is not (InputsFit.Rule or InputsMatch.Rule)) is not { } first
            ? texts["Station.UnderWay"]
            : Because(first);
}
