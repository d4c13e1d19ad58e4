using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Setup.TakingBack;

/// <summary>Records that something of the set-up was retired, taken back, or taken into use again.</summary>
public sealed class SetupDecisions(Writes writes, FindThing things, WhatDepends depends)
{
    private const int LongestReason = 400;

    /// <summary>Records it with the reason, unless it stands so already or something depends on what is to be taken back.</summary>
    public async Task<Answer<SetupThingAnswer>> RunAsync(
        SetupSort sort,
        string code,
        SetupDecisionInput input,
        SetupState state,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (string.IsNullOrWhiteSpace(input.Reason) || input.Reason.Length > LongestReason)
        {
            return Refusal.Invalid("reason", TakingBackSentences.SayWhyItIsTakenBack);
        }

        var (named, unknown) = await things.RunAsync(sort, code, input.Of, cancellation);
        if (named is not { } found)
        {
            return unknown!;
        }

        // Locked first and read again: two who decide at one moment do so one after the other.
        await writes.Book.LockAsync(found.SubjectId, cancellation);
        var (now, _) = await things.RunAsync(sort, code, input.Of, cancellation);
        if (await ProblemAsync(now!, state, cancellation) is { } problem)
        {
            return problem;
        }

        var stamp = writes.Stamp(actor.PersonId);
        var reason = input.Reason.Trim();
        var decision = new SetupDecision(
            stamp.NewId(),
            found.SubjectId,
            sort,
            found.Code,
            state,
            reason,
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        await writes.Book.AppendAsync(found.SubjectId, CommandOf(sort, state), [decision], cancellation);
        return Answer.Ok(new SetupThingAnswer(found.Code, WordOf(state), reason));
    }

    /// <summary>The word of a state on pages: people are not retired but deactivated.</summary>
    public static string WordOf(SetupDecision decision) =>
        decision.Sort != SetupSort.Person ? WordOf(decision.State)
        : decision.State == SetupState.InUse ? "active"
        : "deactivated";

    /// <summary>The word of a state in answers.</summary>
    public static string WordOf(SetupState state) =>
        state switch
        {
            SetupState.Retired => "retired",
            SetupState.Mistake => "mistake",
            _ => "in-use",
        };

    private async Task<Refusal?> ProblemAsync(SetupThing thing, SetupState wanted, CancellationToken cancellation)
    {
        if (thing.State == wanted)
        {
            return Refusal.Conflict(
                wanted switch
                {
                    SetupState.InUse => TakingBackSentences.IsInUseAlready(thing.Name),
                    SetupState.Retired => TakingBackSentences.IsRetiredAlready(thing.Name, thing.Decision!.Reason),
                    _ => TakingBackSentences.IsTakenBackAlready(thing.Name, thing.Decision!.Reason),
                },
                RefusalCode.AlreadyDone
            );
        }

        if (wanted == SetupState.Retired && thing.State == SetupState.Mistake)
        {
            return Refusal.Conflict(TakingBackSentences.IsTakenBackAlready(thing.Name, thing.Decision!.Reason), RefusalCode.AlreadyDone);
        }

        return wanted == SetupState.Mistake && await depends.RunAsync(thing, cancellation) is { Count: > 0 } named
            ? Refusal.Conflict(TakingBackSentences.SomethingDependsOnIt(thing.Name, string.Join("; ", named)), RefusalCode.StillNeeded)
            : null;
    }

    private static string CommandOf(SetupSort sort, SetupState state) =>
        state switch
        {
            SetupState.Retired => "retire-",
            SetupState.Mistake => "take-back-",
            _ => "reinstate-",
        } + sort.ToString().ToLowerInvariant();
}
