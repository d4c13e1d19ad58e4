using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Parts;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Features.Setup.Lots;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>A whole stage in one command: opened, read, fitted, evidenced and closed, or nothing at all.</summary>
public sealed class MakeRecord(Writes writes, WorkBench bench, GateContexts contexts, SlotReader slots, TallySample tally) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/parts/{serial}/records", HandleAsync)
            .For(Role.Builder, Role.Quality)
            .Is(Subjects.Attempts, "makeRecord", "A whole stage in one transaction: open, read, fit, attach, close.");

    /// <summary>A whole stage.</summary>
    /// <param name="Stage" example="insulation">The stage's code.</param>
    /// <param name="Station" example="INSUL-1">The station's code.</param>
    /// <param name="Instruments">The codes of the instruments that are used.</param>
    /// <param name="Readings">The values that were read.</param>
    /// <param name="Fittings">What was fitted.</param>
    /// <param name="Evidence">The files that belong to it.</param>
    /// <param name="Note" example="cable replaced before the test">A remark that is kept with it.</param>
    /// <param name="OccurredAt" example="2026-11-25T08:25:00Z">When it ended; now, when it is left out.</param>
    /// <param name="OpenedAt" example="2026-11-25T08:05:00Z">When it began; when it ended, if it is left out.</param>
    public sealed record Input(
        string Stage,
        string Station,
        IReadOnlyList<string>? Instruments = null,
        IReadOnlyList<TakeReadings.Input>? Readings = null,
        IReadOnlyList<FitInputs.Input>? Fittings = null,
        IReadOnlyList<FileInput>? Evidence = null,
        string? Note = null,
        DateTimeOffset? OccurredAt = null,
        DateTimeOffset? OpenedAt = null
    );

    /// <summary>A file inside JSON: as text (CSV) or as base64.</summary>
    /// <param name="Name" example="front">The name under which the stage asks for it.</param>
    /// <param name="MediaType" example="text/csv">The content type: text/csv, audio/wav, image/jpeg or image/png.</param>
    /// <param name="Text" example="frequency_hz,level_db">The file as text.</param>
    /// <param name="Base64" example="ZnJlcXVlbmN5X2h6LGxldmVsX2Ri">The file in base64.</param>
    /// <param name="FullScaleV" example="2.83">Of a recording: the volts (peak) at full scale.</param>
    public sealed record FileInput(
        string Name,
        string MediaType = "text/csv",
        [property: FileText] string? Text = null,
        [property: FileText] string? Base64 = null,
        decimal? FullScaleV = null
    );

    /// <param name="serial" example="US26-00034">The part's serial, or the carrier that it lies in.</param>
    public static Task<Results<Recorded<ClosingAnswer>, Problem>> HandleAsync(
        string serial,
        Input input,
        SignedIn signedIn,
        MakeRecord use,
        Writes writes
    ) => writes.RecordAsync(cancellation => use.RunAsync(serial, input, signedIn.Actor, cancellation));

    public async Task<Answer<ClosingAnswer>> RunAsync(string serial, Input input, Actor actor, CancellationToken cancellation)
    {
        var (partId, problem) = await bench.FindAsync(serial, input.OccurredAt, input.Station, actor, cancellation);
        if (problem is not null)
        {
            return problem;
        }

        var (values, badNumber) = TakeReadings.Parse(input.Readings ?? []);
        var (requests, badQuantity) = FitInputs.ReadRequests(input.Fittings ?? []);
        var (files, badFile) = Files(input.Evidence ?? []);
        if ((badNumber ?? badQuantity ?? badFile) is { } bad)
        {
            return bad;
        }

        if (partId is null || await writes.Book.OpenAsync(partId.Value, cancellation) is not { } part)
        {
            return Refusal.NotFound(PartsSentences.ThereIsNoPartOrCarrier(serial));
        }

        var (instruments, unknownInstrument) = await bench.InstrumentsAsync(input.Instruments ?? [], cancellation);
        var inputs = await slots.ReadAsync(part.Dossier, requests, cancellation);
        if ((unknownInstrument ?? inputs.Refusal) is { } unknown)
        {
            return unknown;
        }

        var stamp = writes.Stamp(actor.PersonId, input.OccurredAt);
        var stage = part.Dossier.Route.Find(input.Stage);
        var context = contexts.At(stamp.OccurredAt, actor) with
        {
            Instruments = instruments,
            Inside = inputs.ByPosition,
            CalibrationConstants = GateContexts.ConstantsOf(instruments.SelectMany(i => i.Calibrations)),
            Inputs = inputs.ByPosition.Where(i => stage?.Slot(i.Key) is not null || requests.Any(r => r.Position == i.Key)).ToDictionary(),
        };
        DateTimeOffset? openedAt = input.OpenedAt is { } began ? writes.Stamp(actor.PersonId, began).OccurredAt : null;
        var decision = Attempts.Record(
            part.Dossier,
            input.Stage,
            input.Station.Trim().ToUpperInvariant(),
            values,
            files,
            input.Note,
            openedAt,
            context,
            stamp
        );
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        foreach (var file in files)
        {
            await writes.Book.KeepFileAsync(file.Sha256, file.Bytes.ToArray(), cancellation);
        }

        writes.Book.Append(part, "make-record", decision.Facts);
        FittedChildren.MarkFitted(writes.Book, part, inputs.Children, stamp);
        return Answer.Created(
            ClosingAnswer.Of(
                decision.Value!,
                stage!,
                part.Dossier,
                context,
                await tally.SayAsync(part.Dossier, stage!, context, cancellation)
            )
        );
    }

    private static (IReadOnlyList<AttachedFile> Files, Refusal? Refusal) Files(IReadOnlyList<FileInput> inputs)
    {
        var files = new List<AttachedFile>();
        foreach (var input in inputs)
        {
            var buffer = new byte[(input.Base64?.Length ?? 0) * 3 / 4 + 3];
            var length = 0;
            if (
                AttachEvidence.KindOf(input.MediaType) is not { } kind
                || input.Text is null == input.Base64 is null
                || (input.Base64 is { } base64 && !Convert.TryFromBase64String(base64, buffer, out length))
            )
            {
                return (files, Refusal.Invalid("evidence", StationSentences.EvidenceNeedsAMediaType(input.Name)));
            }

            var bytes = input.Text is { } text ? Encoding.UTF8.GetBytes(text) : buffer[..length];
            files.Add(new(input.Name, kind, input.MediaType, Convert.ToHexStringLower(SHA256.HashData(bytes)), bytes, input.FullScaleV));
        }

        return (files, null);
    }
}
