using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Access;
using Traceability.Web.Features.Parts;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>
/// In a workshop that works single-handed: somebody signs in a second time to do a stage that somebody else should do, for one attempt.
/// </summary>
public sealed class SignSecondTime(Writes writes, WorkBench bench) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/parts/{serial}/second-sign-ins", HandleAsync)
            .For(Role.Builder, Role.Quality)
            .Is(
                Subjects.Attempts,
                "signSecondTime",
                "Sign in a second time for a stage that another person should do, where the workshop works single-handed."
            );

    /// <summary>A second sign-in.</summary>
    /// <param name="Stage" example="final-inspection">The stage that is to be done, by its code.</param>
    /// <param name="AloneBecause" example="I work alone this month">Why one person does what two should, at most 500 characters.</param>
    /// <param name="Pin" example="162738">The own PIN.</param>
    public sealed record Input(string Stage, string AloneBecause, string Pin);

    /// <summary>The second sign-in that was recorded.</summary>
    /// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">Its id.</param>
    /// <param name="Serial" example="US-0034">The part's serial.</param>
    /// <param name="Stage" example="final-inspection">The stage that may be done now, once.</param>
    /// <param name="AloneBecause" example="I work alone this month">Why one person does what two should.</param>
    public sealed record Output(Guid Id, string Serial, string Stage, string AloneBecause);

    /// <param name="serial" example="US-0034">The part's serial, or the carrier that it lies in.</param>
    public static async Task<Results<Recorded<Output>, Problem>> HandleAsync(
        string serial,
        Input input,
        SignedIn signedIn,
        SignSecondTime use,
        PinSignature pins,
        Writes writes,
        CancellationToken cancellation
    ) =>
        await pins.UnprovenAsync(signedIn.Actor, input.Pin, cancellation) is { } refusal
            ? ProblemAnswers.From(refusal)
            : await writes.RecordAsync(inside => use.RunAsync(serial, input, signedIn.Actor, inside));

    public async Task<Answer<Output>> RunAsync(string serial, Input input, Actor actor, CancellationToken cancellation)
    {
        if (input.AloneBecause.Length > SecondSignIns.LongestReason)
        {
            return Refusal.Invalid("aloneBecause", StationSentences.ReasonIsTooLong(SecondSignIns.LongestReason));
        }

        if (await bench.OpenAsync(serial, cancellation) is not { } part)
        {
            return Refusal.NotFound(PartsSentences.ThereIsNoPartOrCarrier(serial));
        }

        var decision = SecondSignIns.Sign(part.Dossier, input.Stage, actor.Alone(input.AloneBecause), writes.Stamp(actor.PersonId));
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        writes.Book.Append(part, "sign-second-time", decision.Facts);
        var signed = decision.Value!;
        return Answer.Created(new Output(signed.Id, part.Dossier.Part.Serial, signed.Stage!, signed.Reason));
    }
}
