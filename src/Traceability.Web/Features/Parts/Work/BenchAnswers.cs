using Traceability.Domain.Evidence;
using Traceability.Domain.Gates;
using Traceability.Domain.Gates.Rules;
using Traceability.Domain.Gates.Standings;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Values.Limits;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Queries;
using Traceability.Web.Features.Station;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Parts.Work;

/// <summary>
/// A part in answers. <c>State</c> is the word for how far the part itself has come; <c>Standing</c> says what it is now, with everything
/// in and around it.
/// </summary>
public sealed record PartAnswer(
    string Serial,
    string Kind,
    string Model,
    string Route,
    string? Stage,
    [property: OneOf(typeof(PartState))] string State,
    string? Carrier,
    string? FittedIn,
    Guid? OpenAttempt,
    StandingAnswer Standing
)
{
    public static PartAnswer Of(Dossier d, GateContext context) =>
        new(
            d.Part.Serial,
            d.Part.Kind,
            d.Part.Model,
            $"{d.Route.Model}/{d.Route.Kind}/{d.Route.Revision}",
            d.NextStage()?.Code,
            Words.Of(d.State()),
            d.Around.CarrierCode,
            d.Around.FittedInSerial,
            d.OpenAttempt?.Id,
            StandingAnswer.Of(Domain.Gates.Standings.Standing.Of(d, context))
        );
}

/// <summary>What a part is now, in answers and on pages: <c>code</c> is its word, <c>until</c> is told of what waits.</summary>
public sealed record StandingAnswer(
    [property: OneOf(typeof(StandingCode))] string Code,
    DateTimeOffset? Until,
    string? Because,
    string? Where
)
{
    public static StandingAnswer Of(Standing s) => new(Words.Of(s.Code), s.Until, s.Because, s.Where);
}

/// <summary>A reading in answers; <c>By</c> says who took it, where an answer names people.</summary>
public sealed record ReadingAnswer(
    Guid Id,
    string Characteristic,
    NumberText Value,
    string Unit,
    decimal? Nominal,
    decimal? Lower,
    decimal? Upper,
    bool Met,
    [property: OneOf(typeof(ReadingSource))] string Source,
    decimal? ExpandedUncertainty = null,
    [property: OneOf(typeof(Conformity))] string? Conformity = null,
    double? ProbabilityOfConformance = null,
    Who? By = null
)
{
    public static ReadingAnswer Of(ReadingView r, Func<Guid, Who> who) => Of(r) with { By = who(r.Reading.By) };

    public static ReadingAnswer Of(ReadingView r) =>
        new(
            r.Reading.Id,
            r.Reading.Characteristic,
            new(r.Digits),
            r.Reading.Unit,
            r.Reading.Nominal,
            r.Reading.Lower,
            r.Reading.Upper,
            r.Met,
            r.Reading.Source.ToString().ToLowerInvariant(),
            r.Reading.ExpandedUncertainty,
            r.Reading.ExpandedUncertainty is null ? null : Words.Of(r.Conformity),
            r.ProbabilityOfConformance
        );
}

/// <summary>A kept file in answers; its bytes are at <c>/attempts/{attempt}/evidence/{id}</c>.</summary>
public sealed record EvidenceAnswer(
    Guid Id,
    string Name,
    [property: OneOf(typeof(EvidenceKind))] string Kind,
    string MediaType,
    string Sha256,
    long LengthBytes
)
{
    public static EvidenceAnswer Of(EvidenceRecord e) => new(e.Id, e.Name, e.Kind, e.MediaType, e.Sha256, e.LengthBytes);
}

/// <summary>A gate in answers.</summary>
public sealed record GateAnswer(
    string Stage,
    string Title,
    [property: OneOf(typeof(StageState))] string State,
    DateTimeOffset? OpensAt,
    DateTimeOffset? ClosesAt,
    IReadOnlyList<GateCheck> Checks
)
{
    public static GateAnswer Of(GateVerdict v) => new(v.Stage, v.Title, Words.Of(v.State), v.OpensAt, v.ClosesAt, v.Checks);
}

/// <summary>The next thing to do with a part, in the words of its gate.</summary>
public sealed record NextAnswer(string? Stage, string Title, string State, DateTimeOffset? OpensAt, string? Because)
{
    public static NextAnswer Of(Dossier d, GateContext context)
    {
        if (d.NextStage() is not { } stage)
        {
            return new(
                null,
                d.Part.Kind == PartKinds.Unit ? StationSentences.FinishedForACertificate : StationSentences.FinishedReadyToBeFitted,
                Words.Of(d.State()),
                null,
                null
            );
        }

        var gate = Gatekeeper.Evaluate(d, stage, context with { Instruments = null, Inputs = null });
        return new(stage.Code, stage.Title, Words.Of(gate.State), gate.OpensAt, gate.Unmet.FirstOrDefault()?.Because);
    }
}

/// <summary>A nonconformity in answers.</summary>
public sealed record NonconformityAnswer(Guid Id, string Code, string Description)
{
    public static NonconformityAnswer? Of(Nonconformity? n) => n is null ? null : new(n.Id, n.Code, n.Description);
}

/// <summary>What closing an attempt came to.</summary>
public sealed record ClosingAnswer(
    Guid Attempt,
    string Serial,
    string Stage,
    [property: OneOf(typeof(Verdict))] string Verdict,
    IReadOnlyList<ReadingAnswer> Readings,
    IReadOnlyList<string> Findings,
    NonconformityAnswer? Nonconformity,
    NextAnswer Next
)
{
    public static ClosingAnswer Of(
        Closing closing,
        Stage stage,
        Dossier after,
        GateContext context,
        IReadOnlyList<string>? besides = null
    ) =>
        new(
            closing.Ending.AttemptId,
            after.Part.Serial,
            stage.Code,
            Words.Of(closing.Verdict),
            [.. closing.Readings.Select(ReadingAnswer.Of)],
            [.. closing.Findings, .. besides ?? []],
            NonconformityAnswer.Of(closing.Nonconformity),
            NextAnswer.Of(after, context)
        );
}
