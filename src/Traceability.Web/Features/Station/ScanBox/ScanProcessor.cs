using Traceability.Domain.Scanning;

namespace Traceability.Web.Features.Station.ScanBox;

/// <summary>Processes a scan: the state machine gives a command, it is run, and the state machine makes a prompt of the outcome.</summary>
public sealed class ScanProcessor(CodeLookup codes, PartAtBenchReader parts, CommandRunner commands, StationSignIn signIn)
{
    // A carrier is looked up, becomes a part, is shown: three commands. More would be a loop.
    private const int MostCommands = 5;

    /// <summary>
    /// Takes a scan that answers what a window showed; when that is no longer awaited, nothing is done and the prompt says so.
    /// </summary>
    public async Task<StationAnswer> TakeAsync(
        StationSession session,
        Scan scan,
        Awaited? answers,
        string key,
        CancellationToken cancellation
    )
    {
        var part = await parts.ReadAsync(session, signIn.Actor, cancellation);
        var now = signIn.Reconcile(session, part?.Needs);
        return answers == Awaited.Of(now, part?.Needs)
            ? await TakeAsync(now, part, scan, key, cancellation)
            : new(StationDesk.Behind(now, part?.Needs).Session, part?.Needs);
    }

    /// <summary>Takes what was chosen on another page, whatever the station shows.</summary>
    public async Task<StationAnswer> TakeAsync(StationSession session, Scan scan, string key, CancellationToken cancellation)
    {
        var part = await parts.ReadAsync(session, signIn.Actor, cancellation);
        return await TakeAsync(signIn.Reconcile(session, part?.Needs), part, scan, key, cancellation);
    }

    private async Task<StationAnswer> TakeAsync(
        StationSession session,
        PartAtBench? part,
        Scan scan,
        string key,
        CancellationToken cancellation
    )
    {
        var before = session;
        var step = StationDesk.Take(session, await codes.LotAsPartAsync(scan, session, cancellation), part?.Needs);
        for (var run = 0; run < MostCommands && step.Command is not StationCommand.Nothing; run++)
        {
            if (step.Command is StationCommand.LookUp { What: var what })
            {
                step = await codes.FindAsync(what, step.Session, cancellation) is { } found
                    ? StationDesk.Take(step.Session, found, part?.Needs)
                    : StationDesk.After(step.Session, new ScanOutcome.Unknown(CodeOf(what)), part?.Needs);
                continue;
            }

            if (
                step.Session.Part is { } serial
                && step.Session.Part != part?.Needs.Part
                && await parts.ReadAsync(serial, null, signIn.Actor, cancellation) is null
            )
            {
                return new(StationDesk.After(before, new ScanOutcome.Unknown(serial), part?.Needs).Session, part?.Needs);
            }

            var outcome = await commands.RunAsync(step.Command, part, key, cancellation);
            part = await parts.ReadAsync(step.Session, signIn.Actor, cancellation);
            step = outcome is null
                ? step with
                {
                    Command = new StationCommand.Nothing(),
                }
                : StationDesk.After(step.Session, outcome, part?.Needs);
        }

        return new(step.Session, part?.Needs);
    }

    private static string CodeOf(Scan what) =>
        what switch
        {
            Scan.Part part => part.Serial,
            Scan.Carrier carrier => carrier.Code,
            Scan.Lot lot => lot.Code,
            Scan.Instrument instrument => instrument.Code,
            Scan.Bare bare => bare.Text,
            _ => "",
        };
}
