using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Codes;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Setup.TakingBack;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Setup.Instruments;

/// <summary>
/// Makes an instrument known. With a nominal and a tolerance it is one that is checked against a reference every day of use.
/// </summary>
public sealed partial class AddInstrument(FindThing things, Writes writes) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/instruments", HandleAsync).For(Role.Lead).Is(Subjects.Instruments, "addInstrument", "Add an instrument.");

    /// <summary>A new instrument; with nominal, tolerance and unit it is checked against a reference every day of use.</summary>
    /// <param name="Code" example="RB-1">Its code, as its label will say it: capital letters, digits and hyphens.</param>
    /// <param name="Kind" example="resonance-bench">Its kind: small letters, digits and hyphens.</param>
    /// <param name="Title" example="Resonance bench 1">What it is, at most 120 characters.</param>
    /// <param name="CheckNominal" example="1000">What it must read at its reference.</param>
    /// <param name="CheckTolerance" example="2">How far from it the reading may be, above zero.</param>
    /// <param name="CheckUnit" example="Hz">The unit of both.</param>
    public sealed record Input(
        string Code,
        string Kind,
        string Title,
        decimal? CheckNominal = null,
        decimal? CheckTolerance = null,
        string? CheckUnit = null
    );

    /// <summary>An instrument just added is due: nothing shows yet that it is right.</summary>
    /// <param name="Code" example="RB-1">Its code.</param>
    /// <param name="Kind" example="resonance-bench">Its kind.</param>
    /// <param name="State" example="due">Where it stands.</param>
    public sealed record Output(string Code, string Kind, [property: OneOf(typeof(InstrumentState))] string State);

    public static Task<Results<Recorded<Output>, Problem>> HandleAsync(Input input, SignedIn signedIn, AddInstrument use, Writes writes) =>
        writes.RecordAsync(cancellation => use.RunAsync(input, signedIn.Actor.PersonId, cancellation));

    public async Task<Answer<Output>> RunAsync(Input input, Guid by, CancellationToken cancellation)
    {
        if (!CodeText.TryRead(input.Code, SetupSentences.InstrumentCode, out var code, out var bad))
        {
            return Refusal.Invalid("code", bad);
        }

        if (WhatIsWrong(input) is { } problem)
        {
            return problem;
        }

        if ((await things.RunAsync(SetupSort.Instrument, code, null, cancellation)).Thing is { } taken)
        {
            return Refusal.Conflict(taken.TakenWords ?? SetupSentences.ThereIsAnInstrumentAlready(code), RefusalCode.AlreadyExists);
        }

        var stamp = writes.Stamp(by);
        var instrument = new Instrument(
            stamp.NewId(),
            code,
            input.Kind,
            input.Title.Trim(),
            input.CheckNominal,
            input.CheckTolerance,
            input.CheckUnit,
            stamp.By,
            stamp.OccurredAt,
            stamp.RecordedAt
        );
        await writes.Book.AppendAsync(instrument.Id, "add-instrument", [instrument], cancellation);
        return Answer.Created(new Output(instrument.Code, instrument.Kind, "due"));
    }

    private static Refusal? WhatIsWrong(Input input) =>
        !KindPattern().IsMatch(input.Kind) ? Refusal.Invalid("kind", SetupSentences.KindOfInstrumentIsSmallLetters)
        : string.IsNullOrWhiteSpace(input.Title) || input.Title.Length > 120 ? Refusal.Invalid("title", SetupSentences.TitleHasToCharacters)
        : input.CheckNominal is null != input.CheckTolerance is null || input.CheckNominal is null != input.CheckUnit is null
            ? Refusal.Invalid("checkNominal", SetupSentences.DailyCheckNeedsMore)
        : input.CheckTolerance <= 0 ? Refusal.Invalid("checkTolerance", SetupSentences.ToleranceIsAboveZero)
        : input.CheckUnit is not null && !Units.TryFind(input.CheckUnit, out _, out var unknown) ? Refusal.Invalid("checkUnit", unknown)
        : null;

    [GeneratedRegex("^[a-z][a-z0-9-]{1,39}$")]
    private static partial Regex KindPattern();
}
