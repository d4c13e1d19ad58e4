using System.Security.Cryptography;
using Microsoft.AspNetCore.Http.HttpResults;
using Traceability.Domain.Evidence;
using Traceability.Domain.Gates;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Persistence.Book;
using Traceability.Web.Features.Parts.Work;
using Traceability.Web.Http;
using Traceability.Web.Http.Answers;

namespace Traceability.Web.Features.Station.StageWork;

/// <summary>Keeps a file, byte for byte, as evidence of the attempt now open.</summary>
public sealed class AttachEvidence(Writes writes, WorkBench bench, GateContexts contexts, SendingInstrument sending) : IUseCase
{
    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/attempts/{id:guid}/evidence", HandleAsync)
            .For(Role.Builder, Role.Quality, Role.Instrument)
            .TakesFile("text/csv", "audio/wav", "image/jpeg", "image/png")
            .Is(Subjects.Attempts, "attachEvidence", "Keep a file (text/csv, audio/wav, image/jpeg, image/png), byte for byte.");

    /// <summary>The largest file taken: a minute of 192 kHz, 32 bit, stereo is smaller.</summary>
    public const int MaxBytes = 64 * 1024 * 1024;

    /// <summary>The file that was kept.</summary>
    /// <param name="Id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c0e">The file's id.</param>
    /// <param name="Name" example="front">The name under which the stage asks for it.</param>
    /// <param name="Kind" example="frequency-response">The kind of evidence.</param>
    /// <param name="Sha256" example="9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08">The SHA-256 of its bytes.</param>
    /// <param name="LengthBytes" example="18244">Its length in bytes.</param>
    /// <param name="Warnings">What is odd about the file and does not keep it from being used.</param>
    public sealed record Output(
        Guid Id,
        string Name,
        [property: OneOf(typeof(EvidenceKind))] string Kind,
        string Sha256,
        long LengthBytes,
        IReadOnlyList<string>? Warnings = null
    );

    /// <param name="id" example="0199c3d4-7a10-7c20-9b11-2f6d5e8a4c01">The attempt.</param>
    /// <param name="name" example="front">
    /// The name under which the stage asks for the file; may be left out where the stage asks for one of its sort.
    /// </param>
    /// <param name="fullScaleV" example="2.83">Of a recording: the volts (peak) at full scale.</param>
    /// <param name="occurredAt" example="2026-11-25T08:05:00Z">When it happened; now, when it is left out.</param>
    public static async Task<Results<Recorded<Output>, Problem>> HandleAsync(
        Guid id,
        HttpContext http,
        SignedIn signedIn,
        AttachEvidence use,
        Writes writes,
        string? name = null,
        decimal? fullScaleV = null,
        DateTimeOffset? occurredAt = null
    )
    {
        var (file, wrong) = await FileOfAsync(http, name, fullScaleV);
        return wrong is not null
            ? wrong
            : await writes.RecordAsync(cancellation => use.RunAsync(id, file!, signedIn.Actor, occurredAt, cancellation));
    }

    /// <summary>The body as a file, or 415.</summary>
    internal static async Task<(AttachedFile? File, Problem? Wrong)> FileOfAsync(HttpContext http, string? name, decimal? fullScaleV)
    {
        var media = http.Request.ContentType?.Split(';')[0].Trim().ToLowerInvariant() ?? "";
        if (KindOf(media) is not { } kind)
        {
            return (null, ProblemAnswers.Of(ProblemKinds.UnsupportedContent, StationSentences.SendOneOfTheseKinds));
        }

        var bytes = await ReadAsync(http.Request, http.RequestAborted);
        return (new(name ?? "", kind, media, Convert.ToHexStringLower(SHA256.HashData(bytes)), bytes, fullScaleV), null);
    }

    public async Task<Answer<Output>> RunAsync(
        Guid attemptId,
        AttachedFile file,
        Actor actor,
        DateTimeOffset? occurredAt,
        CancellationToken cancellation
    )
    {
        if (await bench.OpenByAttemptAsync(attemptId, cancellation) is not { } part)
        {
            return Refusal.NotFound(StationSentences.ThereIsNoAttempt(attemptId));
        }

        if (bench.ProblemInside(occurredAt, part.Dossier.Attempts.First(a => a.Id == attemptId).Attempt.OccurredAt, actor) is { } problem)
        {
            return problem;
        }

        if (
            await sending.FindAsync(actor, cancellation) is { } instrument
            && !Readings.IsNamed(part.Dossier, attemptId, instrument.Instrument.Id)
        )
        {
            return Readings.NotNamed(instrument.Instrument.Code);
        }

        var stamp = writes.Stamp(actor.PersonId, occurredAt);
        var named = WithName(part.Dossier.Route.Find(part.Dossier.OpenAttempt?.Stage ?? ""), file);
        var decision = EvidenceFiles.Attach(part.Dossier, attemptId, named, contexts.At(stamp.OccurredAt, actor), stamp);
        if (decision.Refusal is { } refusal)
        {
            return refusal;
        }

        await writes.Book.KeepFileAsync(file.Sha256, file.Bytes.ToArray(), cancellation);
        writes.Book.Append(part, "attach-evidence", decision.Facts);
        var kept = decision.Value!;
        return Answer.Created(
            new Output(
                kept.Id,
                kept.Name,
                kept.Kind,
                kept.Sha256,
                kept.LengthBytes,
                EvidenceFiles.Warnings(kept.Kind, file) is { Count: > 0 } warnings ? warnings : null
            )
        );
    }

    /// <summary>The whole body, at most <see cref="MaxBytes"/>.</summary>
    public static async Task<byte[]> ReadAsync(HttpRequest request, CancellationToken cancellation)
    {
        using var buffer = new MemoryStream();
        var piece = new byte[64 * 1024];
        for (int read; (read = await request.Body.ReadAsync(piece, cancellation)) > 0; )
        {
            buffer.Write(piece, 0, read);
            if (buffer.Length > MaxBytes)
            {
                throw new BadHttpRequestException($"a file has at most {MaxBytes} bytes; nothing was stored", 413);
            }
        }

        return buffer.ToArray();
    }

    /// <summary>The kind that a content type stands for, before the stage says more exactly which CSV it wants.</summary>
    public static string? KindOf(string media) =>
        media switch
        {
            "text/csv" => EvidenceKind.ClimateLog.Code(),
            "audio/wav" or "audio/x-wav" or "audio/wave" => EvidenceKind.NoiseRecording.Code(),
            "image/jpeg" or "image/png" => EvidenceKind.Photo.Code(),
            _ => null,
        };

    /// <summary>A file sent without a name is the one of its sort that the stage asks for, when there is only one.</summary>
    internal static AttachedFile WithName(Stage? stage, AttachedFile file)
    {
        if (file.Name.Length > 0)
        {
            return file;
        }

        var needs = stage?.Evidence.Where(e => EvidenceKinds.FromCode(e.Kind)?.ContentTypes().Contains(file.MediaType) == true).ToList();
        return needs is [var only]
            ? file with
            {
                Name = only.Name,
            }
            : file with
            {
                Name = file.Kind == EvidenceKind.Photo.Code() ? "photo" : "",
            };
    }
}
