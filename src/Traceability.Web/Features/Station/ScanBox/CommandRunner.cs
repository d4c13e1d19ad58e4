using System.Text.Json;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Records;
using Traceability.Domain.Scanning;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Station.Loads;
using Traceability.Web.Features.Station.StageWork;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.ScanBox;

/// <summary>
/// Runs the commands of the state machine with the same use cases as the API, and gives their outcome. The scan's key makes
/// a scan that arrives twice record once.
/// </summary>
public sealed class CommandRunner(
    Writes writes,
    GateContexts contexts,
    PartAtBenchReader parts,
    InstrumentQuery instruments,
    StationSignIn signIn,
    IStringLocalizer<StationTexts> texts,
    OpenAttempt openAttempt,
    TakeReadings takeReadings,
    CorrectReading correctReading,
    FitInputs fitInputs,
    CloseAttempt closeAttempt,
    AbandonAttempt abandonAttempt,
    OpenLoad openLoad,
    CloseLoad closeLoad
)
{
    /// <summary>The outcome of the command; null when the prompt that came with it stays.</summary>
    public async Task<ScanOutcome?> RunAsync(StationCommand command, PartAtBench? part, string key, CancellationToken cancellation) =>
        command switch
        {
            StationCommand.Identify who => await signIn.IdentifyAsync(who.Badge, who.Pin),
            StationCommand.SignOut => await signIn.SignOutAsync(),
            StationCommand.ShowPart => new ScanOutcome.Shown(),
            StationCommand.AddInstrument add => await InstrumentAsync(add.Code, part, cancellation),
            StationCommand.AddToLoad add => await AddToLoadAsync(add, cancellation),
            _ when signIn.Actor is not { } actor || !(actor.Is(Role.Builder) || actor.Is(Role.Quality)) => new ScanOutcome.Refused(
                texts["Station.NotABuilder"],
                texts["Station.NotABuilderRemedy"]
            ),
            _ => await WriteAsync(command, signIn.Actor, part, key),
        };

    private Task<ScanOutcome?> WriteAsync(StationCommand command, Actor actor, PartAtBench? part, string key) =>
        command switch
        {
            StationCommand.OpenAttempt open => RecordAsync<OpenAttempt.Output>(
                key,
                c => openAttempt.RunAsync(open.Part, new(open.StageCode, open.Station, open.Instruments), actor, c),
                o => new ScanOutcome.Opened(o.Id)
            ),
            StationCommand.RecordReading read => RecordAsync<TakeReadings.Output>(
                key,
                c => takeReadings.RunAsync(read.AttemptId, [new(read.Characteristic, new(read.Value.Digits))], actor, c),
                _ => new ScanOutcome.Kept()
            ),
            StationCommand.CorrectReading wrong => RecordAsync<CorrectReading.Output>(
                key,
                c => correctReading.RunAsync(wrong.ReadingId, new(new(wrong.Digits), wrong.Reason), actor, c),
                _ => new ScanOutcome.Kept()
            ),
            StationCommand.Fit put => RecordAsync<FitInputs.Output>(
                key,
                c => fitInputs.RunAsync(put.AttemptId, [new(put.Position, put.Child, put.Lot)], actor, c),
                _ => new ScanOutcome.Kept()
            ),
            StationCommand.CloseAttempt close => RecordAsync<ClosingAnswer>(
                key,
                c => closeAttempt.RunAsync(close.AttemptId, new(), actor, c),
                o => Closed(o, part)
            ),
            StationCommand.Abandon abandon => RecordAsync<PartAnswer>(
                key,
                c => abandonAttempt.RunAsync(abandon.AttemptId, new(abandon.Reason), actor, c),
                _ => new ScanOutcome.Abandoned()
            ),
            StationCommand.StartLoad load => RecordAsync<OpenLoad.Output>(
                key,
                c => openLoad.RunAsync(new(load.StageCode, load.Station, load.Parts, load.Instruments), actor, c),
                o => new ScanOutcome.LoadStarted(o.Id)
            ),
            StationCommand.CloseLoad load => RecordAsync<CloseLoad.Output>(
                key,
                c => closeLoad.RunAsync(load.LoadId, new(), actor, c),
                Closed
            ),
            _ => Task.FromResult<ScanOutcome?>(null),
        };

    private async Task<ScanOutcome?> RecordAsync<T>(string key, Func<CancellationToken, Task<Answer<T>>> use, Func<T, ScanOutcome?> outcome)
    {
        var written = await writes.RunPageAsync("station-" + key, use);
        return written switch
        {
            { KeyReused: true } => new ScanOutcome.Refused(texts["Station.TakenBefore"]),
            { Refusal: { } refusal } => Refused(refusal),
            _ => outcome(JsonSerializer.Deserialize<T>(written.Json, JsonRules.OurAnswers)!),
        };
    }

    /// <summary>The first reason in one line; what would help, and the other reasons, below it.</summary>
    public static ScanOutcome.Refused Refused(Refusal refusal)
    {
        var unmet = refusal.Checks.Where(c => !c.Met).ToList();
        if (unmet is not [var first, .. var others])
        {
            return new(GateSentence.Of(refusal.Message));
        }

        var detail = string.Join(
            " ",
            others.Select(c => c.Because).Prepend(first.Remedy ?? "").Where(t => t.Length > 0).Select(GateSentence.Of)
        );
        return new(GateSentence.Of(first.Because), detail.Length > 0 ? detail : null);
    }

    private ScanOutcome.Closed Closed(ClosingAnswer closing, PartAtBench? part)
    {
        var title = part?.Stage?.Title ?? closing.Stage;
        return closing.Verdict == "pass"
            ? new(true, texts["Station.Passed", closing.Serial, title])
            : new(false, texts[closing.Nonconformity is null ? "Station.Failed" : "Station.FailedDecision", closing.Serial, title]);
    }

    private ScanOutcome.Closed Closed(CloseLoad.Output load)
    {
        var failed = load.Results.Where(r => r.Verdict != "pass").Select(r => r.Serial).ToList();
        return failed.Count == 0
            ? new(true, texts["Station.LoadPassed", load.Results.Count])
            : new(false, texts["Station.LoadFailed", load.Results.Count - failed.Count, failed.Count, string.Join(", ", failed)]);
    }

    private async Task<ScanOutcome?> InstrumentAsync(string code, PartAtBench? part, CancellationToken cancellation)
    {
        if (await instruments.FindAsync([code], cancellation) is not [var standing])
        {
            return new ScanOutcome.Unknown(code);
        }

        var context = contexts.At(writes.Now, null);
        if (part?.Stage is { } stage)
        {
            // Asked about this instrument alone: which others are missing is the next prompt's matter.
            var check = InstrumentsUsable.Check(
                new(part.Dossier, stage with { InstrumentKinds = [] }, context with { Instruments = [standing] })
            );
            return check is { Met: false }
                ? new ScanOutcome.InstrumentRefused(code, GateSentence.Of($"{check.Because}. {check.Remedy}"))
                : null;
        }

        return standing.Retired is not null || standing.OpenHolds.Count > 0 || standing.InForce(context.Day) is null
            ? new ScanOutcome.InstrumentRefused(code, texts["Station.InstrumentNotUsable", code])
            : null;
    }

    private async Task<ScanOutcome?> AddToLoadAsync(StationCommand.AddToLoad add, CancellationToken cancellation)
    {
        var part = await parts.ReadAsync(add.Serial, add.Again ? add.StageCode : null, signIn.Actor, cancellation);
        return part switch
        {
            null => new ScanOutcome.LoadPartRefused(add.Serial, texts["Station.NotKnown", add.Serial]),
            { Open: not null } => new ScanOutcome.LoadPartRefused(
                add.Serial,
                texts["Station.InWorkAlready", add.Serial, part.Needs.StageTitle]
            ),
            { Needs.Gate: not GateSign.Open } => new ScanOutcome.LoadPartRefused(add.Serial, $"{add.Serial}: {part.Needs.GateWords}"),
            _ when add.StageCode is { } stage && part.Needs.StageCode != stage => new ScanOutcome.LoadPartRefused(
                add.Serial,
                texts["Station.OtherStage", add.Serial, part.Needs.StageTitle]
            ),
            _ => null,
        };
    }
}
