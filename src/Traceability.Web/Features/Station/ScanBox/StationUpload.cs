using System.Security.Cryptography;
using Microsoft.Extensions.Localization;
using Traceability.Domain.Evidence;
using Traceability.Domain.Records;
using Traceability.Domain.Routes;
using Traceability.Domain.Scanning;
using Traceability.Domain.Values;
using Traceability.Domain.Work;
using Traceability.Domain.Work.BenchWork;
using Traceability.Web.Features.Station.Loads;
using Traceability.Web.Features.Station.StageWork;
using Traceability.Web.Http;

namespace Traceability.Web.Features.Station.ScanBox;

/// <summary>Takes a file at the station: for the attempt now open, or for the whole run when the part is in one.</summary>
public sealed class StationUpload(
    PartAtBenchReader parts,
    StationSignIn signIn,
    Writes writes,
    AttachEvidence keep,
    KeepLoadLog keepLog,
    IStringLocalizer<StationTexts> texts
)
{
    /// <summary>The session after the file; what is wrong with a file is said line by line.</summary>
    public async Task<StationAnswer> TakeAsync(StationSession session, SentFile sent, string key, CancellationToken cancellation)
    {
        var part = await parts.ReadAsync(session, signIn.Actor, cancellation);
        session = signIn.Reconcile(session, part?.Needs);
        var now = Awaited.Of(session, part?.Needs);
        if ((sent.Part, sent.Attempt) != (now.Part, now.Attempt))
        {
            return new(StationDesk.Behind(session, part?.Needs).Session, part?.Needs);
        }

        var file = sent.File;
        var outcome =
            part is not { Open: { } open, Stage: { } stage } ? new ScanOutcome.Refused(texts["Station.NoFileNow"])
            : signIn.Actor is not { } actor || !(actor.Is(Role.Builder) || actor.Is(Role.Quality))
                ? new ScanOutcome.Refused(texts["Station.NotABuilder"], texts["Station.NotABuilderRemedy"])
            : file is not { Length: > 0 } ? new ScanOutcome.Refused(texts["Station.NoFile"])
            : file.Length > AttachEvidence.MaxBytes ? new ScanOutcome.Refused(texts["Station.FileTooLarge"])
            : await AttachedAsync(stage, file, sent.Name ?? "", sent.FullScaleV, cancellation) is not { } attached
                ? new ScanOutcome.Refused(texts["Station.BadFullScale"])
            : await KeepAsync(open.Id, open.Attempt.LoadId, attached);
        part = await parts.ReadAsync(session, signIn.Actor, cancellation);
        return new(StationDesk.After(session, outcome, part?.Needs).Session, part?.Needs);

        async Task<ScanOutcome> KeepAsync(Guid attempt, Guid? load, AttachedFile attached)
        {
            var written = await writes.RunPageAsync(
                "station-" + key,
                c =>
                    load is { } run && attached.Kind != EvidenceKind.Photo.Code()
                        ? keepLog.RunAsync(run, attached, actor!, null, c)
                        : keep.RunAsync(attempt, attached, actor!, null, c)
            );
            return written.Refusal is { } refusal ? FileRefused(refusal) : new ScanOutcome.Shown();
        }
    }

    private static ScanOutcome.Refused FileRefused(Refusal refusal) =>
        refusal.Errors.TryGetValue("file", out var lines)
            ? new(refusal.Message.Split(':')[0] + ".", string.Join(" ", lines.Take(8)))
            : CommandRunner.Refused(refusal);

    /// <summary>The kind is what the stage asks for under that name; browsers differ in what they call a CSV.</summary>
    private static async Task<AttachedFile?> AttachedAsync(
        Stage stage,
        IFormFile file,
        string name,
        string? fullScaleV,
        CancellationToken cancellation
    )
    {
        var volts = EnteredDecimal.TryParse(fullScaleV, out var entered, out _) ? entered.Value : (decimal?)null;
        if (!string.IsNullOrWhiteSpace(fullScaleV) && volts is not > 0)
        {
            return null;
        }

        using var buffer = new MemoryStream();
        await file.CopyToAsync(buffer, cancellation);
        var bytes = buffer.ToArray();
        var kind = EvidenceKinds.FromCode(stage.Evidence.FirstOrDefault(e => e.Name == name)?.Kind) ?? EvidenceKind.Photo;
        var media = kind == EvidenceKind.Photo && bytes is [0x89, (byte)'P', ..] ? Photo.Png : kind.ContentTypes()[0];
        return new(name.Length > 0 ? name : "photo", kind.Code(), media, Convert.ToHexStringLower(SHA256.HashData(bytes)), bytes, volts);
    }
}

/// <summary>A file as its form sends it, with the part and the attempt that the form was shown for.</summary>
public sealed record SentFile(IFormFile? File, string? Name, string? FullScaleV, string Part, string Attempt);
